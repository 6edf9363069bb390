// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/action.h"

#include <memory>
#include <optional>
#include <string>

namespace levelbar::storage {

// One transaction without a recording, for imports and the demo: a million rows cost a third of
// what a recorded action takes. Rows it adds carry its import number, by which it can be taken
// back.
class BulkWrite : public WriteScope {
public:
    // `source`: what the import came from, without people's names ("sets.csv").
    BulkWrite(Logbook& logbook, const std::string& source, Moment now);
    ~BulkWrite() override; // rolls back unless committed

    [[nodiscard]] std::optional<ImportId> import() const override;
    void commit();

private:
    struct Transaction;
    std::unique_ptr<Transaction> m_transaction;
};

// Deletes the rows that the import added and that nobody changed since; returns how many.
int takeBackImport(Logbook& logbook, ImportId import, Moment now);

} // namespace levelbar::storage
