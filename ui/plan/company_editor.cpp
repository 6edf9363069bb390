// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/plan/company_editor.h"

#include "storage/company_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/plan/plan_reader.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kMemberRole = Qt::UserRole + 1;

} // namespace

CompanyEditor::CompanyEditor(Workspace& workspace, QWidget* parent)
    : QDialog(parent)
    , m_workspace(workspace)
    , m_spotters(new QListWidget(this))
    , m_pairs(new QListWidget(this))
    , m_one(new QComboBox(this))
    , m_other(new QComboBox(this))
    , m_add(new QPushButton(tr("&Keep apart"), this))
{
    setObjectName(QStringLiteral("companyEditor"));
    setWindowTitle(tr("Who shares a rack"));
    m_spotters->setObjectName(QStringLiteral("companySpotters"));
    m_spotters->setAccessibleName(tr("Who can spot; the space bar says so"));
    m_pairs->setObjectName(QStringLiteral("companyPairs"));
    m_pairs->setAccessibleName(tr("Who must not share a rack; Delete takes a pair out"));
    m_one->setObjectName(QStringLiteral("companyOne"));
    m_one->setAccessibleName(tr("One of two who are kept apart"));
    m_other->setObjectName(QStringLiteral("companyOther"));
    m_other->setAccessibleName(tr("The other of the two"));
    m_add->setObjectName(QStringLiteral("companyAdd"));
    makeLayout();
    connect(m_spotters, &QListWidget::itemChanged, this, &CompanyEditor::setSpotter);
    connect(m_add, &QPushButton::clicked, this, &CompanyEditor::addPair);
    auto* remove = new QShortcut(Qt::Key_Delete, m_pairs);
    remove->setContext(Qt::WidgetShortcut);
    connect(remove, &QShortcut::activated, this, &CompanyEditor::removePair);
    connect(&workspace.notifier, &ChangeNotifier::changed, this, [this](const auto& change) {
        if (change.touchesRoster && isVisible()) {
            // Later: a tick of the list may be what is announced.
            QMetaObject::invokeMethod(
                this,
                [this] { perform(m_workspace.prompter, [this] { fill(); }); },
                Qt::QueuedConnection);
        }
    });
}

void CompanyEditor::makeLayout()
{
    const auto heading = [this](const QString& text) {
        auto* label = new QLabel(text, this);
        label->setWordWrap(true);
        return label;
    };
    auto* pair = new QHBoxLayout;
    pair->addWidget(m_one, 1);
    pair->addWidget(m_other, 1);
    pair->addWidget(m_add);
    auto* close = new QPushButton(tr("Done (Esc)"), this);
    connect(close, &QPushButton::clicked, this, &CompanyEditor::close);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(heading(tr("Can spot for others (space bar). With anybody ticked, every rack "
                                 "gets one of them as far as they go.")));
    layout->addWidget(m_spotters, 3);
    layout->addWidget(heading(tr("Not at one rack (Delete takes a pair out)")));
    layout->addWidget(m_pairs, 2);
    layout->addLayout(pair);
    layout->addWidget(close);
    resize(460, 560);
}

QString CompanyEditor::nameOf(MemberId member) const
{
    const auto found = std::find_if(
        m_people.begin(), m_people.end(), [member](const Member& one) { return one.id == member; });
    return found == m_people.end() ? QString() : personName(*found);
}

void CompanyEditor::setPeople(const std::vector<MemberHistory>& people)
{
    m_people.clear();
    m_one->clear();
    m_other->clear();
    for (const MemberHistory& person : people) {
        m_people.push_back(person.member);
        for (QComboBox* box : {m_one, m_other}) {
            box->addItem(personName(person.member), static_cast<qlonglong>(person.member.id.value));
        }
    }
    m_other->setCurrentIndex(m_other->count() > 1 ? 1 : 0);
    m_add->setEnabled(m_people.size() > 1);
    fill();
}

void CompanyEditor::fill()
{
    const RackCompany company = storage::CompanyStore(m_workspace.logbook).all();
    const QSignalBlocker blocker(m_spotters);
    const int row = m_spotters->currentRow();
    m_spotters->clear();
    for (const Member& person : m_people) {
        auto* item = new QListWidgetItem(personName(person), m_spotters);
        item->setData(kMemberRole, static_cast<qlonglong>(person.id.value));
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        const bool canSpot =
            std::find(company.spotters.begin(), company.spotters.end(), person.id) !=
            company.spotters.end();
        item->setCheckState(canSpot ? Qt::Checked : Qt::Unchecked);
    }
    m_spotters->setCurrentRow(std::clamp(row, 0, std::max(0, m_spotters->count() - 1)));
    m_pairs->clear();
    m_apart.clear();
    for (const auto& [one, other] : company.apart) {
        const QString first = nameOf(one);
        const QString second = nameOf(other);
        if (!first.isEmpty() && !second.isEmpty()) { // pairs of other classes are not shown
            m_apart.emplace_back(one, other);
            m_pairs->addItem(tr("%1 and %2").arg(first, second));
        }
    }
    m_pairs->setCurrentRow(m_pairs->count() > 0 ? 0 : -1);
}

template <typename Work> void CompanyEditor::write(const Work& work)
{
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditRackRules, m_workspace.clock.now());
        work(action);
        m_workspace.notifier.announce(action.commit());
    });
}

void CompanyEditor::setSpotter(const QListWidgetItem* item)
{
    const MemberId member{item->data(kMemberRole).toLongLong()};
    const bool canSpot = item->checkState() == Qt::Checked;
    write([&](storage::Action& action) {
        storage::CompanyStore::setSpotter(action, member, canSpot);
    });
}

void CompanyEditor::addPair()
{
    const MemberId one{m_one->currentData().toLongLong()};
    const MemberId other{m_other->currentData().toLongLong()};
    if (one == other || !one.isStored() || !other.isStored()) {
        return; // nobody is kept apart from themselves
    }
    write([&](storage::Action& action) {
        storage::CompanyStore::setApart(action, one, other, true);
    });
}

void CompanyEditor::removePair()
{
    const int row = m_pairs->currentRow();
    if (row < 0 || static_cast<std::size_t>(row) >= m_apart.size()) {
        return;
    }
    const auto [one, other] = m_apart[static_cast<std::size_t>(row)];
    write([one = one, other = other](storage::Action& action) {
        storage::CompanyStore::setApart(action, one, other, false);
    });
}

} // namespace levelbar::ui
