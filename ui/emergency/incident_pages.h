// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/incident_store.h"

#include <QByteArray>
#include <QString>

namespace levelbar::ui {

// A report of an incident as a PDF page to be signed. `who`: as the report names them.
[[nodiscard]] QByteArray incidentPdf(const storage::Incident& incident, const QString& who);

} // namespace levelbar::ui
