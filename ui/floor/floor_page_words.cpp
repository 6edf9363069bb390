// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
// What the page says of the class and of the set under the cursor.
#include "ui/floor/floor_bar.h"
#include "ui/floor/floor_grid.h"
#include "ui/floor/floor_page.h"
#include "ui/floor/floor_status.h"
#include "ui/floor/floor_words.h"
#include "ui/floor/side_words.h"
#include "ui/words.h"

#include <QLabel>

namespace levelbar::ui {

void FloorPage::showHint()
{
    const FloorSheet& sheet = m_model.sheet();
    QString hint;
    if (!m_bar->chosenClass()) {
        hint = tr("There is no class yet: type a name above and add it.");
    } else if (sheet.items.items.empty() && sheet.columns.empty()) {
        hint = tr("This class has no template yet: open Template and add its exercises.");
    } else if (sheet.rows.empty()) {
        hint =
            tr("Mark who came on the left: Space or Enter. Their sets are planned as on the Plan "
               "page: each at their own next load.");
    }
    if (sheet.week) {
        hint += (hint.isEmpty() ? QString() : QStringLiteral(" ")) +
                (!sheet.week->items.empty()
                     ? tr("This week has exercises of its own (Plan): the template holds again "
                          "after it.")
                 : sheet.week->kind == WeekKind::Lighter
                     ? tr("A lighter week: half the sets, two more in reserve.")
                     : QString());
    }
    if (sheet.items.isProposed) {
        hint += (hint.isEmpty() ? QString() : QStringLiteral(" ")) +
                tr("The exercises are proposed from the last %n meetings; Template keeps or "
                   "changes them.",
                   nullptr,
                   sheet.items.meetingsSeen);
    }
    m_hint->setText(hint);
    m_hint->setVisible(!hint.isEmpty());
}

// Beside another load than last time that one.
QString FloorPage::planText(const PlannedSet& planned, const Exercise* exercise) const
{
    const QString plan = tr("plan %1").arg(plannedText(planned, exercise));
    const auto& usual = m_pad.book().usualLoads;
    const auto last = usual.find({planned.member, planned.exercise});
    const bool isOther = last != usual.end() && planned.load.thousandths() > 0 &&
                         exactWeight(last->second) != exactWeight(planned.load);
    return isOther ? tr("%1 (last time %2)").arg(plan, ui::loadText(last->second)) : plan;
}

// What the numbers behind a word mean, while it is typed.
QString FloorPage::codesFor(const QString& typed)
{
    if (typed.startsWith(QLatin1String(".3")) || typed.startsWith(QLatin1Char('p'))) {
        QStringList areas;
        for (const std::string_view area : bodyAreas()) {
            areas << tr("%1 %2").arg(areas.size() + 1).arg(plain(area));
        }
        return tr("Pain: score.area.side. Areas: %1. Sides: 1 left, 2 right, none for both")
            .arg(areas.join(QStringLiteral(", ")));
    }
    if (typed.startsWith(QLatin1String(".6")) || typed.startsWith(QLatin1Char('g'))) {
        return tr("Left: .6 asks why; .6.1 had to go, .6.2 unwell, .6.3 pain, .6.4 something else");
    }
    if (typed.startsWith(QLatin1String(".7")) || typed.startsWith(QLatin1Char('k'))) {
        return tr("Gone: .7 the load under the cursor; .7.4 rack or bench 4");
    }
    return {};
}

void FloorPage::showPlace()
{
    showWall();
    const auto key = m_grid->currentKey();
    const auto cell = key ? m_model.cell(*key) : std::nullopt;
    if (!cell) {
        const bool isEmpty = m_model.rowCount() == 0;
        m_status->showPlace({}, isEmpty ? tr("Nobody is marked yet") : tr("Choose a set"), {});
        return;
    }
    const Exercise* exercise = m_model.reference().library.exercise(key->exercise);
    QString plan = tr("nothing planned");
    if (cell->done) {
        plan = tr("done %1").arg(doneText(*cell->done, exercise, m_model.reference().effort));
    } else if (cell->planned) {
        plan = planText(*cell->planned, exercise);
    }
    const QString sides = cell->done ? QString() : sidesText(*cell, key->side);
    if (!sides.isEmpty()) {
        // A limit or an open pair takes the place of the planned reps.
        const bool isOtherwise = cell->sides.stopAt || cell->sides.isOpenPair;
        const QString load = cell->planned ? ui::loadText(cell->planned->load) : QString();
        plan = tr("%1 · %2").arg(isOtherwise ? load : plan, sides);
    }
    m_status->showPlace(personName(m_model.reference(), key->member),
                        placeText(m_model.reference(), {key->exercise, key->number, key->side}),
                        plan);
}

void FloorPage::showProgress()
{
    int known = 0;
    int all = 0;
    for (const FloorRow& row : m_model.sheet().rows) {
        for (const FloorCell& cell : row.cells) {
            known += cell.done ? 1 : 0;
            all += cell.done || cell.isOpen() ? 1 : 0;
        }
    }
    m_status->showProgress(known, all);
}

} // namespace levelbar::ui
