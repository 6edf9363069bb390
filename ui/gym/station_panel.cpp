// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/gym/station_panel.h"

#include "storage/station_store.h"
#include "ui/change_notifier.h"
#include "ui/gym/rack_picture.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kPictureWidth = 260;

// The room of this name, made where there is none; no room for no name.
std::optional<RoomId>
roomNamed(storage::WriteScope& scope, const Stations& stations, const QString& name)
{
    if (name.isEmpty()) {
        return std::nullopt;
    }
    for (const Room& room : stations.rooms) {
        if (plain(room.name).compare(name, Qt::CaseInsensitive) == 0) {
            return room.id;
        }
    }
    return storage::StationStore::put(scope, Room{{}, name.toStdString()});
}

void dropEmptyRooms(storage::WriteScope& scope)
{
    const Stations stations = storage::StationStore(scope.logbook()).all();
    for (const Room& room : stations.rooms) {
        const auto stands = [&room](const auto& station) { return station.room == room.id; };
        if (std::none_of(stations.racks.begin(), stations.racks.end(), stands) &&
            std::none_of(stations.benches.begin(), stations.benches.end(), stands)) {
            storage::StationStore::remove(scope, room.id);
        }
    }
}

bool hasRack(const StationModel& model, const std::string& name)
{
    for (int row = 0; row < model.rowCount(); ++row) {
        const Rack* rack = model.rackAt(row);
        if (rack != nullptr && rack->name == name) {
            return true;
        }
    }
    return false;
}

bool hasBench(const StationModel& model, const std::string& name)
{
    for (int row = 0; row < model.rowCount(); ++row) {
        const Bench* bench = model.benchAt(row);
        if (bench != nullptr && bench->name == name) {
            return true;
        }
    }
    return false;
}

} // namespace

StationPanel::StationPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_model(new StationModel(this))
    , m_table(new QTableView(this))
    , m_what(new QComboBox(this))
    , m_name(new QLineEdit(this))
    , m_line(new QLabel(this))
    , m_chosen(new QLabel(this))
    , m_picture(new RackPicture(this))
{
    setObjectName(QStringLiteral("stationPanel"));
    setAccessibleName(tr("Racks and benches"));
    makeLayout();
    connect(m_model, &StationModel::edited, this, &StationPanel::keep);
    connect(m_model, &StationModel::goneMarked, this, &StationPanel::keepGone);
    connect(m_model, &StationModel::refused, this, &StationPanel::refuse);
    connect(m_table->selectionModel(),
            &QItemSelectionModel::currentRowChanged,
            this,
            &StationPanel::showChosen);
    connect(&workspace.notifier, &ChangeNotifier::changed, this, [this](const auto& change) {
        if (change.touchesLibrary) {
            refresh();
        }
    });
    setFocusProxy(m_table);
    refresh();
}

void StationPanel::makeLayout()
{
    m_table->setObjectName(QStringLiteral("stationTable"));
    m_table->setAccessibleName(tr("Racks and benches"));
    m_table->setModel(m_model);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setAlternatingRowColors(true);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 10);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setStretchLastSection(true);
    auto* removal = new QShortcut(QKeySequence::Delete, m_table);
    removal->setContext(Qt::WidgetShortcut);
    connect(removal, &QShortcut::activated, this, &StationPanel::removeChosen);
    m_line->setObjectName(QStringLiteral("stationLine"));
    m_chosen->setObjectName(QStringLiteral("stationChosen"));
    for (QLabel* label : {m_line, m_chosen}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }
    auto* why = new QLabel(tr("Measure hole 1 once, from the floor to the top of a bar that lies "
                              "in it: every height of set-up cards and push-ups rests on it. "
                              "Change a cell by typing."),
                           this);
    why->setWordWrap(true);
    auto* left = new QVBoxLayout;
    left->addWidget(why);
    left->addWidget(makeAddLine());
    left->addWidget(m_line);
    left->addWidget(m_table, 1);
    auto* side = new QWidget(this);
    side->setFixedWidth(kPictureWidth);
    auto* right = new QVBoxLayout(side);
    right->setContentsMargins(0, 0, 0, 0);
    right->addWidget(m_chosen);
    right->addWidget(m_picture, 1);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 10, 16, 10);
    layout->setSpacing(20);
    layout->addLayout(left, 1);
    layout->addWidget(side);
}

QWidget* StationPanel::makeAddLine()
{
    m_what->setObjectName(QStringLiteral("stationWhat"));
    m_what->setAccessibleName(tr("Rack or bench"));
    m_what->addItem(tr("rack"));
    m_what->addItem(tr("bench"));
    m_name->setObjectName(QStringLiteral("stationName"));
    m_name->setAccessibleName(tr("Name of the rack or bench"));
    m_name->setPlaceholderText(tr("Name"));
    m_name->setMaximumWidth(240);
    auto* add = new QPushButton(tr("Add"), this);
    add->setObjectName(QStringLiteral("stationAdd"));
    auto* removal = new QPushButton(tr("Remove"), this);
    removal->setObjectName(QStringLiteral("stationRemove"));
    removal->setToolTip(tr("Removes the chosen line (Delete)"));
    connect(add, &QPushButton::clicked, this, &StationPanel::add);
    connect(m_name, &QLineEdit::returnPressed, this, &StationPanel::add);
    connect(removal, &QPushButton::clicked, this, &StationPanel::removeChosen);
    auto* line = new QWidget(this);
    auto* layout = new QHBoxLayout(line);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_what);
    layout->addWidget(m_name);
    layout->addWidget(add);
    layout->addStretch(1);
    layout->addWidget(removal);
    return line;
}

void StationPanel::refresh()
{
    perform(m_workspace.prompter, [&] {
        const storage::StationStore store(m_workspace.logbook);
        const QModelIndex index = m_table->currentIndex();
        m_model->show(store.all(), store.goneOn(m_workspace.clock.today()));
        const int row = std::clamp(index.row(), 0, std::max(0, m_model->rowCount() - 1));
        m_table->setCurrentIndex(m_model->index(row, std::max(1, index.column())));
        showChosen();
    });
}

void StationPanel::showChosen()
{
    const int row = m_table->currentIndex().row();
    const Rack* rack = m_model->rackAt(row);
    if (rack == nullptr) {
        rack = m_model->rackAt(0);
    }
    m_picture->show(rack == nullptr ? RackHoles{} : rack->holes);
    m_chosen->setText(rack == nullptr
                          ? tr("No rack yet: holes 5 cm apart from 30 cm up are assumed.")
                          : tr("%1: holes and heights").arg(plain(rack->name)));
}

bool StationPanel::write(storage::ActionKind kind,
                         const std::function<void(storage::WriteScope&)>& work)
{
    m_line->clear();
    return perform(m_workspace.prompter, [&] {
        storage::Action action(m_workspace.logbook, kind, m_workspace.clock.now());
        work(action);
        m_workspace.notifier.announce(action.commit());
    });
}

void StationPanel::add()
{
    const std::string name = m_name->text().trimmed().toStdString();
    const bool isRack = m_what->currentIndex() == 0;
    Rack rack = assumedRack();
    rack.name = name;
    Bench bench;
    bench.name = name;
    const auto checkedRack = checkRack(rack);
    if (!checkedRack) {
        refuse(words(checkedRack.error()));
        return;
    }
    const bool isTaken = isRack ? hasRack(*m_model, name) : hasBench(*m_model, name);
    if (isTaken) {
        refuse(tr("'%1' is there already; say how many of them").arg(plain(name)));
        return;
    }
    const bool isDone = write(storage::ActionKind::EditStation, [&](storage::WriteScope& scope) {
        if (isRack) {
            storage::StationStore::put(scope, rack);
        } else {
            storage::StationStore::put(scope, bench);
        }
    });
    if (isDone) {
        m_name->clear();
    }
    m_name->setFocus(Qt::OtherFocusReason);
}

void StationPanel::removeChosen()
{
    const int row = m_table->currentIndex().row();
    const Rack* rack = m_model->rackAt(row);
    const Bench* bench = m_model->benchAt(row);
    if (rack == nullptr && bench == nullptr) {
        return;
    }
    write(storage::ActionKind::EditStation, [&](storage::WriteScope& scope) {
        if (rack != nullptr) {
            storage::StationStore::remove(scope, rack->id);
        } else {
            storage::StationStore::remove(scope, bench->id);
        }
        dropEmptyRooms(scope);
    });
}

void StationPanel::keep(const StationEdit& edit)
{
    write(storage::ActionKind::EditStation, [&](storage::WriteScope& scope) {
        const Stations before = storage::StationStore(m_workspace.logbook).all();
        const auto room = roomNamed(scope, before, edit.room);
        std::visit(
            [&](auto station) {
                station.room = room;
                storage::StationStore::put(scope, station);
            },
            edit.station);
        dropEmptyRooms(scope);
    });
}

void StationPanel::keepGone(const PieceKey& key, int count)
{
    write(storage::ActionKind::MarkGone, [&](storage::WriteScope& scope) {
        storage::StationStore::setGone(scope, m_workspace.clock.today(), key, count);
    });
}

void StationPanel::refuse(const QString& sentence)
{
    m_line->setText(tr("Not kept: %1.").arg(sentence));
}

} // namespace levelbar::ui
