// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_attempt.h"
#include "ui/floor/floor_bar.h"
#include "ui/floor/floor_page.h"
#include "ui/floor/floor_status.h"
#include "ui/floor/floor_words.h"
#include "ui/floor/template_editor.h"
#include "ui/words.h"

#include <algorithm>

namespace levelbar::ui {

QString FloorPage::painText(MemberId member) const
{
    if (!m_roster) {
        return {};
    }
    for (const MemberReview& one : m_roster->review.members) {
        if (one.member.id != member) {
            continue;
        }
        for (const Attention& reason : one.attention) {
            if (reason.kind == AttentionKind::Pain) {
                return words(Phrase{attentionTemplate(reason), reason.arguments});
            }
        }
    }
    return {};
}

void FloorPage::mark(MemberId member, bool came)
{
    const FloorSheet& sheet = m_model.sheet();
    if (!m_bar->chosenClass()) {
        m_status->say(tr("There is no class yet: type a name above and add it."), true);
        return;
    }
    const QString name = personName(m_model.reference(), member);
    const auto row = std::find_if(
        sheet.rows.begin(), sheet.rows.end(), [&](const auto& r) { return r.member == member; });
    const bool hasDone = row != sheet.rows.end() &&
                         std::any_of(row->cells.begin(), row->cells.end(), [](const auto& cell) {
                             return cell.done.has_value();
                         });
    if (!came && hasDone) {
        m_status->say(tr("%1 has done sets here; take those back first, then the mark.").arg(name),
                      true);
        return;
    }
    const bool went = succeeds(failureOf([&] {
        if (came) {
            const FloorReference& reference = m_model.reference();
            m_writer.markCame(sheet,
                              reference,
                              member,
                              m_sidesToday.plansOf(m_workspace.logbook, reference, sheet, member));
        } else {
            m_writer.unmark(sheet, member);
        }
    }));
    if (went) {
        const QString pain = came ? painText(member) : QString();
        const QString said =
            came ? tr("%1 came.").arg(name) : tr("%1 is not marked any more.").arg(name);
        m_status->say(pain.isEmpty() ? said : tr("%1 %2").arg(said, pain), !pain.isEmpty());
    }
}

void FloorPage::addClass(const QString& name)
{
    ClassId added;
    const bool went = succeeds(failureOf([&] {
        const storage::ClassStore classes(m_workspace.logbook);
        if (const auto known = classes.find(name.toStdString())) {
            added = known->id;
            return;
        }
        added = m_writer.addClass(name.toStdString());
    }));
    if (went) {
        m_bar->closeNewClass();
        m_bar->choose(added, m_bar->chosenDay());
    }
}

void FloorPage::keepTemplate(const std::vector<TemplateItem>& items)
{
    const FloorSheet& sheet = m_model.sheet();
    if (!m_bar->chosenClass()) {
        return;
    }
    const std::vector<TemplateItem> wanted = items; // the editor is refilled while this runs
    m_template->setEdited(false);
    const bool went = succeeds(failureOf([&] {
        const FloorReference& reference = m_model.reference();
        m_writer.setTemplate(sheet, reference, wanted, [&](MemberId member) {
            return m_sidesToday.plansOf(m_workspace.logbook, reference, sheet, member);
        });
    }));
    m_template->setEdited(!went);
    if (went) {
        m_status->say(tr("Template kept: %n exercises.", nullptr, static_cast<int>(wanted.size())),
                      false);
    }
}

} // namespace levelbar::ui
