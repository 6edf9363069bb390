// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/aside_panel.h"

#include "storage/today_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kHeight = 120;

} // namespace

AsidePanel::AsidePanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_list(new QListWidget(this))
{
    setObjectName(QStringLiteral("todayAside"));
    m_list->setObjectName(QStringLiteral("todayAsideList"));
    m_list->setAccessibleName(tr("Put aside; Enter shows it again, Esc leaves"));
    m_list->setFixedHeight(kHeight);
    m_list->setWordWrap(true);
    m_list->installEventFilter(this);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(new QLabel(m_list->accessibleName(), this));
    layout->addWidget(m_list);
    connect(m_list, &QListWidget::itemDoubleClicked, this, &AsidePanel::openCurrent);
}

void AsidePanel::show(std::span<const SettledReason> settled, const ReviewedRosterPointer& roster)
{
    const int row = m_list->currentRow();
    m_list->clear();
    m_settled.clear();
    for (const SettledReason& one : settled) {
        const auto& members = roster->review.members;
        const auto of = std::find_if(members.begin(), members.end(), [&](const auto& member) {
            return member.member.id == one.member;
        });
        const bool isOver = one.until && *one.until <= roster->review.asOf;
        if (of == members.end() || isOver) {
            continue;
        }
        const Member& member = of->member;
        m_settled.push_back(one);
        m_list->addItem(tr("%1. %2").arg(plain(member.name.empty() ? member.code : member.name),
                                         words(settledPhrase(one))));
    }
    if (m_settled.empty()) {
        auto* none = new QListWidgetItem(tr("Nothing is put aside."), m_list);
        none->setFlags(Qt::ItemIsEnabled);
        return;
    }
    m_list->setCurrentRow(std::clamp(row, 0, m_list->count() - 1));
}

void AsidePanel::toggle()
{
    setVisible(isHidden());
    if (isHidden()) {
        Q_EMIT left();
    } else {
        m_list->setFocus(Qt::OtherFocusReason);
    }
}

void AsidePanel::openCurrent()
{
    const auto row = static_cast<std::size_t>(m_list->currentRow());
    if (row >= m_settled.size()) {
        return;
    }
    const SettledReason one = m_settled[row];
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::SettleReason, m_workspace.clock.now());
        storage::TodayStore::open(action, one.member, one.kind);
        m_workspace.notifier.announce(action.commit());
    });
}

bool AsidePanel::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        switch (static_cast<QKeyEvent*>(event)->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            openCurrent();
            return true;
        case Qt::Key_Escape:
        case Qt::Key_A:
            toggle();
            return true;
        default:
            break;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace levelbar::ui
