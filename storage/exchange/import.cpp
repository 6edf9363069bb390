// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/import.h"

#include "storage/bulk_write.h"
#include "storage/exchange/import_context.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

ImportReport importCsv(Logbook& logbook, const ImportRequest& request, Moment now)
{
    ImportReport report;
    std::string source;
    for (const auto* file : {&request.members, &request.sets, &request.tests}) {
        if (*file) {
            source += (source.empty() ? "" : ", ") + (*file)->name;
        }
    }
    BulkWrite scope(logbook, source, now);
    translateErrors(logbook.path(), [&] {
        ImportContext context(scope, request, report);
        if (request.members) {
            importMembers(context, *request.members);
        }
        if (request.sets) {
            importSets(context, *request.sets);
        }
        if (request.tests) {
            importTrials(context, *request.tests);
        }
    });
    // Anything short of a commit is undone when the scope ends.
    if (report.faults.empty() && !request.dryRun) {
        scope.commit();
    }
    return report;
}

} // namespace levelbar::storage
