// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/action.h"

#include <QObject>

namespace levelbar::ui {

// Tells the pages what a commit touched, taking back included: one signal a commit. The one who
// commits calls announce(); pages and the background review listen.
class ChangeNotifier : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    void announce(const storage::Change& change) { Q_EMIT changed(change); }

Q_SIGNALS:
    void changed(const levelbar::storage::Change& change);
};

} // namespace levelbar::ui
