// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_page.h"

#include "core/base/number.h"
#include "storage/member_store.h"
#include "ui/floor/floor_grid.h"
#include "ui/floor/floor_model.h"
#include "ui/floor/template_editor.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QComboBox>
#include <QCompleter>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QScopedValueRollback>
#include <QSettings>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kPanelWidth = 290;
constexpr int kMemberRole = Qt::UserRole + 1;
constexpr int kLongestInitials = 6;
constexpr const char* kInitialsSetting = "floor/initials";

QDate qdate(Day day)
{
    const CivilDate date = civilDate(day);
    return {date.year, date.month, date.day};
}

Day dayOf(const QDate& date)
{
    return levelbar::dayOf({date.year(), date.month(), date.day()}).value_or(Day{});
}

// The next load up or down that rooms usually have: bars by 2.5 kg, dumbbells by 1 kg up to ten
// and by 2 kg above, pounds by five. Common practice, no source.
Mass stepped(Mass load, int direction, Implement implement)
{
    std::int64_t step = 2500;
    if (load.unit() == MassUnit::Pound) {
        step = 5000;
    } else if (implement == Implement::Dumbbell || implement == Implement::Kettlebell) {
        const bool isSmall = load.thousandths() + (direction > 0 ? 1 : -1) <= 10000;
        step = isSmall ? 1000 : 2000;
    } else if (implement == Implement::Machine || implement == Implement::Cable) {
        step = 5000;
    }
    const std::int64_t next = load.thousandths() + direction * step;
    return Mass::ofThousandths(std::max<std::int64_t>(0, next), load.unit());
}

// "62.5", "135 lb", "60kg"; without a unit the one it had.
Result<Mass> parseLoad(QString text, MassUnit before)
{
    text = text.trimmed().toLower().replace(QLatin1Char(','), QLatin1Char('.'));
    MassUnit unit = before;
    for (const MassUnit known : {MassUnit::Kilogram, MassUnit::Pound}) {
        if (text.endsWith(plain(unitWord(known)))) {
            unit = known;
            text.chop(2);
        }
    }
    return parseMass(text.trimmed().toStdString(), unit);
}

} // namespace

FloorPage::FloorPage(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_session(workspace)
    , m_model(new FloorModel(m_session, this))
    , m_grid(new FloorGrid(*m_model, this))
    , m_class(new QComboBox(this))
    , m_day(new QDateEdit(qdate(workspace.clock.today()), this))
    , m_initials(new QLineEdit(this))
    , m_people(new QListWidget(this))
    , m_addPerson(new QLineEdit(this))
    , m_template(new TemplateEditor(this))
    , m_place(new QLabel(this))
    , m_status(new QLabel(this))
{
    setObjectName(QStringLiteral("floorPage"));
    setAccessibleName(tr("Floor"));
    makeLayout();
    m_initials->setText(QSettings().value(QLatin1String(kInitialsSetting)).toString());
    m_session.setInitials(m_initials->text().toStdString());
    connect(m_class, &QComboBox::activated, this, &FloorPage::openChosen);
    connect(m_class->lineEdit(), &QLineEdit::returnPressed, this, &FloorPage::addClass);
    connect(m_day, &QDateEdit::dateChanged, this, &FloorPage::openChosen);
    connect(m_people, &QListWidget::itemChanged, this, &FloorPage::togglePerson);
    connect(m_addPerson, &QLineEdit::returnPressed, this, &FloorPage::addPerson);
    connect(m_initials, &QLineEdit::textChanged, this, [this](const QString& text) {
        QSettings().setValue(QLatin1String(kInitialsSetting), text);
        m_session.setInitials(text.toStdString());
    });
    connect(m_template, &TemplateEditor::edited, this, [this](const auto& items) {
        const QScopedValueRollback writing(m_isWriting, true);
        perform(m_workspace.prompter, [&] { m_session.setTemplate(items); });
        rebuild();
    });
    connect(m_grid, &FloorGrid::storeWanted, this, &FloorPage::storeCell);
    connect(m_grid, &FloorGrid::loadStepWanted, this, &FloorPage::stepLoad);
    connect(m_grid, &FloorGrid::takeBackWanted, this, &FloorPage::takeBackWanted);
    connect(m_grid, &FloorGrid::placeChanged, this, &FloorPage::tellPlace);
    connect(&workspace.notifier, &ChangeNotifier::changed, this, &FloorPage::takeChange);
    readClasses();
    openChosen();
}

void FloorPage::makeLayout()
{
    m_class->setObjectName(QStringLiteral("floorClass"));
    m_class->setAccessibleName(tr("Class"));
    m_class->setEditable(true);
    m_class->setInsertPolicy(QComboBox::NoInsert);
    m_class->lineEdit()->setPlaceholderText(tr("Class; a new name and Enter adds one"));
    m_day->setObjectName(QStringLiteral("floorDay"));
    m_day->setAccessibleName(tr("Day"));
    m_day->setCalendarPopup(true);
    m_day->setDisplayFormat(QStringLiteral("ddd d MMM yyyy"));
    m_initials->setObjectName(QStringLiteral("floorInitials"));
    m_initials->setAccessibleName(tr("Your initials"));
    m_initials->setPlaceholderText(tr("Initials"));
    m_initials->setMaxLength(kLongestInitials);
    m_people->setObjectName(QStringLiteral("floorPeople"));
    m_people->setAccessibleName(tr("Who came; Space ticks"));
    m_addPerson->setObjectName(QStringLiteral("floorAddPerson"));
    m_addPerson->setAccessibleName(tr("Add a person to this class today"));
    m_addPerson->setPlaceholderText(tr("Somebody else: name or id, Enter"));
    m_place->setObjectName(QStringLiteral("floorPlace"));
    m_status->setObjectName(QStringLiteral("floorStatus"));
    for (QLabel* label : {m_place, m_status}) {
        QFont large = label->font();
        large.setPointSizeF(large.pointSizeF() * 1.3);
        large.setBold(label == m_place);
        label->setFont(large);
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
    }
    auto* keys = new QLabel(tr("Enter as planned · 9 reps · 9.2 nine with two left · 0 tried · + − "
                               "load · l 62.5 load · "
                               "Backspace takes back"),
                            this);
    keys->setObjectName(QStringLiteral("floorKeys"));
    keys->setWordWrap(true);
    auto* caution =
        new QLabel(tr("Pain stops the set. A maximal try needs clearance, and a spotter "
                      "or safeties. Local rules come first."),
                   this);
    caution->setObjectName(QStringLiteral("floorCaution"));
    caution->setWordWrap(true);

    auto* panel = new QWidget(this);
    panel->setFixedWidth(kPanelWidth);
    auto* side = new QVBoxLayout(panel);
    side->setContentsMargins(0, 0, 8, 0);
    side->addWidget(m_class);
    auto* row = new QHBoxLayout;
    row->addWidget(m_day, 1);
    m_initials->setFixedWidth(76);
    row->addWidget(m_initials);
    side->addLayout(row);
    side->addWidget(new QLabel(tr("Who came"), this));
    side->addWidget(m_people, 3);
    side->addWidget(m_addPerson);
    side->addWidget(new QLabel(tr("Exercises of this class"), this));
    side->addWidget(m_template, 2);
    auto* main = new QVBoxLayout;
    main->addWidget(m_place);
    main->addWidget(m_grid, 1);
    main->addWidget(m_status);
    main->addWidget(keys);
    main->addWidget(caution);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addWidget(panel);
    layout->addLayout(main, 1);
}

QString FloorPage::status() const
{
    return m_status->text();
}

void FloorPage::readClasses()
{
    perform(m_workspace.prompter, [&] {
        const QSignalBlocker blocker(m_class);
        const QString before = m_class->currentText();
        m_class->clear();
        for (const auto& groupClass : storage::ClassStore(m_workspace.logbook).all()) {
            m_class->addItem(plain(groupClass.name), static_cast<qlonglong>(groupClass.id.value));
        }
        m_class->setCurrentIndex(std::max(0, m_class->findText(before)));
    });
}

void FloorPage::openClass(ClassId groupClass, Day day)
{
    const QSignalBlocker blocker(m_day);
    m_day->setDate(qdate(day));
    m_class->setCurrentIndex(m_class->findData(static_cast<qlonglong>(groupClass.value)));
    openChosen();
}

void FloorPage::openChosen()
{
    if (m_class->currentIndex() < 0) {
        tell(tr("There is no class yet: type its name above and press Enter."));
        return;
    }
    perform(m_workspace.prompter, [&] {
        m_session.open(ClassId{m_class->currentData().toLongLong()}, dayOf(m_day->date()));
    });
    rebuild();
    tell(m_session.present().empty() ? tr("Tick who came; their plan is laid at once.")
                                     : QString());
}

void FloorPage::rebuild()
{
    const QModelIndex before = m_grid->currentIndex();
    const int row = before.row();
    const int column = before.column();
    m_model->reset();
    fillPeople();
    m_template->show(m_session.items(), m_session.library(), m_session.isTemplateProposed());
    QModelIndex next = m_model->index(row, column);
    if (!next.isValid()) {
        next = m_grid->nextOpen({});
    }
    m_grid->setCurrentIndex(next.isValid() ? next : m_model->index(0, 0));
}

void FloorPage::fillPeople()
{
    const QSignalBlocker blocker(m_people);
    const int row = m_people->currentRow();
    m_people->clear();
    for (const Member& member : m_session.candidates()) {
        auto* item =
            new QListWidgetItem(plain(member.name.empty() ? member.code : member.name), m_people);
        item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
        item->setCheckState(m_session.isPresent(member.id) ? Qt::Checked : Qt::Unchecked);
        item->setData(kMemberRole, static_cast<qlonglong>(member.id.value));
    }
    m_people->setCurrentRow(std::max(0, row));
    QStringList others;
    perform(m_workspace.prompter, [&] {
        for (const Member& member : storage::MemberStore(m_workspace.logbook).all()) {
            others << plain(member.name.empty() ? member.code : member.name + "  " + member.code);
        }
    });
    auto* completer = new QCompleter(others, m_addPerson);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setFilterMode(Qt::MatchContains);
    m_addPerson->setCompleter(completer);
}

void FloorPage::togglePerson(QListWidgetItem* item)
{
    const MemberId id{item->data(kMemberRole).toLongLong()};
    const bool came = item->checkState() == Qt::Checked;
    const auto& candidates = m_session.candidates();
    const auto member = std::find_if(
        candidates.begin(), candidates.end(), [&](const Member& m) { return m.id == id; });
    if (member == candidates.end()) {
        return;
    }
    const QScopedValueRollback writing(m_isWriting, true);
    const QString name = item->text();
    bool isDone = true;
    perform(m_workspace.prompter, [&] { isDone = m_session.setPresent(*member, came); });
    rebuild();
    if (!isDone) {
        tell(tr("%1 has sets today; take those back first.").arg(name));
    } else {
        tell(came ? tr("%1 came.").arg(name) : tr("%1 is not here.").arg(name));
    }
}

void FloorPage::addPerson()
{
    const QString wanted = m_addPerson->text().trimmed();
    bool isFound = false;
    const QScopedValueRollback writing(m_isWriting, true);
    perform(m_workspace.prompter, [&] {
        for (const Member& member : storage::MemberStore(m_workspace.logbook).all()) {
            const QString name = plain(member.name);
            const QString code = plain(member.code);
            const bool isHit = wanted.compare(name, Qt::CaseInsensitive) == 0 || wanted == code ||
                               wanted == name + QStringLiteral("  ") + code;
            if (isHit && m_session.isOpen()) {
                m_session.setPresent(member, true);
                isFound = true;
                break;
            }
        }
    });
    if (isFound) {
        m_addPerson->clear();
        rebuild();
        tell(tr("%1 came.").arg(wanted));
    } else {
        tell(tr("There is nobody called \"%1\".").arg(wanted));
    }
}

void FloorPage::addClass()
{
    const QString name = m_class->currentText().trimmed();
    if (name.isEmpty() || m_class->findText(name, Qt::MatchFixedString) >= 0) {
        openChosen();
        return;
    }
    perform(m_workspace.prompter, [&] {
        const ClassId id = m_session.addClass(name.toStdString());
        readClasses();
        m_class->setCurrentIndex(m_class->findData(static_cast<qlonglong>(id.value)));
    });
    openChosen();
}

void FloorPage::storeCell(const QModelIndex& cell)
{
    const QString typed = m_model->typed(cell);
    if (typed.startsWith(QLatin1Char('l'))) {
        setTypedLoad(cell, typed.mid(1));
        return;
    }
    const bool isCurrent = cell == m_grid->currentIndex();
    if (typed.isEmpty() && !m_model->isOpen(cell)) {
        m_grid->setCurrentIndex(m_grid->nextOpen(cell)); // done already: nothing to accept
        return;
    }
    const auto refused = [&](const Fault& fault) {
        m_model->setFault(cell, words(fault));
        tell(words(fault));
    };
    const auto entry = parseCell(typed.toStdString());
    if (!entry) {
        refused(entry.error());
        return;
    }
    const QScopedValueRollback writing(m_isWriting, true);
    perform(m_workspace.prompter, [&] {
        const auto stored = m_session.store(
            static_cast<std::size_t>(cell.row()), static_cast<std::size_t>(cell.column()), *entry);
        if (!stored) {
            refused(stored.error());
            return;
        }
        m_model->setTyped(cell, QString());
        const QString known = word(howKnownWord(stored->performed.known));
        tell(tr("Saved: %1, %2, %3").arg(m_model->place(cell), doneText(*stored), known));
        const QModelIndex next = isCurrent ? m_grid->nextOpen(cell) : QModelIndex();
        if (next.isValid()) {
            m_grid->setCurrentIndex(next);
        }
    });
}

void FloorPage::setTypedLoad(const QModelIndex& cell, const QString& text)
{
    const FloorCell& found = m_session.cell(static_cast<std::size_t>(cell.row()),
                                            static_cast<std::size_t>(cell.column()));
    const auto load =
        parseLoad(text, found.planned ? found.planned->load.unit() : MassUnit::Kilogram);
    if (!load) {
        m_model->setFault(cell, words(load.error()));
        tell(words(load.error()));
        return;
    }
    if (!found.planned || found.done) {
        m_model->setTyped(cell, QString());
        tell(tr("The load of a set that is done stays; take it back first."));
        return;
    }
    const QScopedValueRollback writing(m_isWriting, true);
    perform(m_workspace.prompter, [&] {
        m_session.setLoad(
            static_cast<std::size_t>(cell.row()), static_cast<std::size_t>(cell.column()), *load);
        m_model->setTyped(cell, QString());
        m_model->refresh();
        tell(tr("Load: %1 %2").arg(plain(load->number()), plain(unitWord(load->unit()))));
    });
}

void FloorPage::stepLoad(const QModelIndex& cell, int direction)
{
    const FloorCell& found = m_session.cell(static_cast<std::size_t>(cell.row()),
                                            static_cast<std::size_t>(cell.column()));
    if (!found.planned || found.done) {
        tell(tr("The load of a set that is done stays; take it back first."));
        return;
    }
    const Exercise& exercise =
        *m_session.columns()[static_cast<std::size_t>(cell.column())].exercise;
    const Mass load = stepped(found.planned->load, direction, exercise.implement);
    setTypedLoad(cell, plain(load.number()));
}

void FloorPage::tellPlace(const QModelIndex& cell)
{
    m_place->setText(cell.isValid() ? m_model->place(cell) : QString());
}

void FloorPage::tell(const QString& sentence)
{
    m_status->setText(sentence);
    m_status->setAccessibleDescription(sentence);
}

void FloorPage::takeChange(const storage::Change& change)
{
    const bool isOurs = m_isWriting;
    const bool matters = change.touchesSets || change.touchesClasses || change.touchesRoster ||
                         change.touchesLibrary;
    if (isOurs || !matters) {
        return;
    }
    readClasses();
    perform(m_workspace.prompter, [&] { m_session.reload(); });
    rebuild();
}

} // namespace levelbar::ui
