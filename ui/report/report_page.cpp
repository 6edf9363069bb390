// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/report_page.h"

#include "storage/period_reader.h"
#include "ui/perform.h"
#include "ui/report/report_reader.h"
#include "ui/words.h"

#include <QComboBox>
#include <QCompleter>
#include <QDate>
#include <QDateEdit>
#include <QFormLayout>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kChoicesWidth = 320;
constexpr int kPeriodDays = 84;

QDate dateOf(Day day)
{
    const CivilDate date = civilDate(day);
    return {date.year, date.month, date.day};
}

Day dayFrom(const QDateEdit& edit)
{
    const QDate date = edit.date();
    return dayOf({date.year(), date.month(), date.day()}).value_or(Day{});
}

} // namespace

ReportPage::ReportPage(Workspace& workspace, BackgroundReview& review, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_review(review)
    , m_form(new QFormLayout)
    , m_kind(new QComboBox(this))
    , m_person(new QComboBox(this))
    , m_home(new QComboBox(this))
    , m_group(new QComboBox(this))
    , m_from(new QDateEdit(this))
    , m_to(new QDateEdit(this))
    , m_paper(new QComboBox(this))
    , m_save(new QPushButton(tr("Save as PDF"), this))
    , m_csv(new QPushButton(tr("Save as CSV"), this))
    , m_print(new QPushButton(tr("Print"), this))
    , m_line(new QLabel(this))
    , m_printer(std::make_unique<QPrinter>(QPrinter::HighResolution))
{
    m_printer->setOutputFormat(QPrinter::PdfFormat); // painted for the screen, never sent
    m_preview = new QPrintPreviewWidget(m_printer.get(), this);
    nameWidgets();
    m_kind->addItems(
        {tr("A person's page"), tr("Half-page to take home"), tr("Manager's summary")});
    m_home->addItems({tr("Body weight alone"), tr("Dumbbells")});
    m_paper->addItems({tr("A4"), tr("Letter")});
    m_person->setEditable(true);
    m_person->setInsertPolicy(QComboBox::NoInsert);
    m_person->completer()->setFilterMode(Qt::MatchContains);
    m_person->completer()->setCompletionMode(QCompleter::PopupCompletion);
    const Day today = workspace.clock.today();
    m_from->setDate(dateOf(today - (kPeriodDays - 1)));
    m_to->setDate(dateOf(today));
    m_to->setMaximumDate(dateOf(today));
    makeLayout();
    makeShortcuts();
    fit();
    connect(m_preview, &QPrintPreviewWidget::paintRequested, this, [this](QPrinter* printer) {
        if (m_content) {
            paintReport(*m_content, *printer);
        }
    });
    connect(m_kind, &QComboBox::currentIndexChanged, this, [this] {
        fit();
        refresh();
    });
    for (QComboBox* box : {m_person, m_home, m_group, m_paper}) {
        connect(box, &QComboBox::currentIndexChanged, this, &ReportPage::refresh);
    }
    for (QDateEdit* edit : {m_from, m_to}) {
        connect(edit, &QDateEdit::editingFinished, this, &ReportPage::refresh);
    }
    connect(&review, &BackgroundReview::ready, this, [this] {
        if (isVisible()) {
            fillChoices();
            refresh();
        }
    });
}

ReportPage::~ReportPage()
{
    delete m_preview; // before the printer that it paints on
}

void ReportPage::nameWidgets()
{
    const auto name = [](QWidget* widget, const char* object, const QString& words) {
        widget->setObjectName(QString::fromLatin1(object));
        widget->setAccessibleName(words);
    };
    name(this, "reportPage", tr("Reports"));
    name(m_kind, "reportKind", tr("Report"));
    name(m_person, "reportPerson", tr("Person; type a part of the name"));
    name(m_home, "reportHome", tr("What they have at home"));
    name(m_group, "reportGroup", tr("Group"));
    name(m_from, "reportFrom", tr("First day"));
    name(m_to, "reportTo", tr("Last day"));
    name(m_paper, "reportPaper", tr("Paper"));
    name(m_save, "reportSave", tr("Save as PDF"));
    name(m_csv, "reportCsv", tr("Save as CSV"));
    name(m_print, "reportPrint", tr("Print"));
    name(m_line, "reportLine", tr("What was done last"));
    name(m_preview, "reportPreview", tr("The pages as they will be printed"));
    m_save->setToolTip(tr("Ctrl+S"));
    m_print->setToolTip(tr("Ctrl+P"));
    setFocusProxy(m_kind);
}

void ReportPage::makeLayout()
{
    m_form->addRow(tr("Report"), m_kind);
    m_form->addRow(tr("Person"), m_person);
    m_form->addRow(tr("At home"), m_home);
    m_form->addRow(tr("Group"), m_group);
    m_form->addRow(tr("From"), m_from);
    m_form->addRow(tr("To"), m_to);
    m_form->addRow(tr("Paper"), m_paper);
    m_form->setRowWrapPolicy(QFormLayout::WrapAllRows);
    m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    for (QDateEdit* edit : {m_from, m_to}) {
        edit->setCalendarPopup(true);
        edit->setDisplayFormat(QStringLiteral("d MMM yyyy"));
    }
    for (QComboBox* box : {m_person, m_group}) {
        box->setMinimumContentsLength(10);
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    }
    m_line->setWordWrap(true);
    m_line->setTextFormat(Qt::PlainText);
    auto* choices = new QVBoxLayout;
    choices->setContentsMargins(0, 0, 8, 0);
    choices->addLayout(m_form);
    choices->addSpacing(10);
    for (QPushButton* button : {m_save, m_csv, m_print}) {
        choices->addWidget(button);
    }
    choices->addWidget(m_line);
    choices->addStretch(1);
    auto* side = new QWidget(this);
    side->setFixedWidth(kChoicesWidth);
    side->setLayout(choices);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addWidget(side);
    layout->addWidget(m_preview, 1);
    m_preview->setZoomMode(QPrintPreviewWidget::FitInView);
}

void ReportPage::makeShortcuts()
{
    connect(m_save, &QPushButton::clicked, this, [this] { save(QStringLiteral("pdf")); });
    connect(m_csv, &QPushButton::clicked, this, [this] { save(QStringLiteral("csv")); });
    connect(m_print, &QPushButton::clicked, this, &ReportPage::print);
    const auto add = [this](QKeySequence::StandardKey key, QPushButton* button) {
        auto* shortcut = new QShortcut(QKeySequence(key), this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, button, &QPushButton::click);
    };
    add(QKeySequence::Save, m_save);
    add(QKeySequence::Print, m_print);
}

void ReportPage::fit()
{
    const int kind = m_kind->currentIndex();
    const auto show = [this](QWidget* field, bool isShown) {
        field->setVisible(isShown);
        m_form->labelForField(field)->setVisible(isShown);
    };
    show(m_person, kind != Summary);
    show(m_home, kind == Home);
    for (QWidget* field : {static_cast<QWidget*>(m_group),
                           static_cast<QWidget*>(m_from),
                           static_cast<QWidget*>(m_to)}) {
        show(field, kind == Summary);
    }
    m_csv->setVisible(kind == Summary);
}

void ReportPage::fillChoices()
{
    const QSignalBlocker noPerson(m_person);
    const QSignalBlocker noGroup(m_group);
    const QVariant person = m_person->currentData();
    const QVariant group = m_group->currentData();
    m_person->clear();
    if (const auto roster = m_review.current()) {
        for (const MemberReview& review : roster->review.members) {
            const Member& member = review.member;
            m_person->addItem(member.name.empty()
                                  ? plain(member.code)
                                  : tr("%1  %2").arg(plain(member.name), plain(member.code)),
                              static_cast<qlonglong>(member.id.value));
        }
    }
    m_person->setCurrentIndex(std::max(0, m_person->findData(person)));
    m_person->lineEdit()->setCursorPosition(0); // a long name is read from its start
    m_group->clear();
    m_group->addItem(tr("Everyone"));
    perform(m_workspace.prompter, [&] {
        for (const std::string& name : storage::groupsOf(m_workspace.logbook)) {
            m_group->addItem(name.empty() ? tr("(no group)") : plain(name), plain(name));
        }
    });
    m_group->setCurrentIndex(group.isValid() ? std::max(0, m_group->findData(group)) : 0);
}

void ReportPage::openPerson(MemberId member)
{
    fillChoices();
    {
        const QSignalBlocker noKind(m_kind);
        const QSignalBlocker noPerson(m_person);
        m_kind->setCurrentIndex(Person);
        const int place = m_person->findData(static_cast<qlonglong>(member.value));
        m_person->setCurrentIndex(std::max(0, place));
        m_person->lineEdit()->setCursorPosition(0);
    }
    fit();
    refresh();
    m_print->setFocus(Qt::OtherFocusReason);
}

void ReportPage::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    fillChoices();
    refresh();
}

Paper ReportPage::paper() const
{
    return m_paper->currentIndex() == 1 ? Paper::Letter : Paper::A4;
}

ReviewedRosterPointer ReportPage::rosterOf(Day day)
{
    auto current = m_review.current();
    if (current && day >= current->review.asOf) {
        return current;
    }
    if (!m_past || m_past->review.asOf != day) {
        QGuiApplication::setOverrideCursor(Qt::WaitCursor);
        perform(m_workspace.prompter,
                [&] { m_past = reviewRoster(m_workspace.logbook, day, [] { return true; }); });
        QGuiApplication::restoreOverrideCursor();
    }
    return m_past;
}

std::optional<ReportContent> ReportPage::read()
{
    const storage::Logbook& logbook = m_workspace.logbook;
    const MemberId member{m_person->currentData().toLongLong()};
    const auto current = m_review.current();
    if (!current) {
        return std::nullopt;
    }
    if (m_kind->currentIndex() == Person) {
        return readPersonReport(logbook, *current, member);
    }
    if (m_kind->currentIndex() == Home) {
        const HomeKit kit = m_home->currentIndex() == 1 ? HomeKit::Dumbbells : HomeKit::BodyWeight;
        return readTakeAway(logbook, member, kit, current->review.asOf);
    }
    const auto roster = rosterOf(dayFrom(*m_to));
    if (!roster) {
        return std::nullopt;
    }
    SummaryQuestion question{std::min(dayFrom(*m_from), roster->review.asOf), std::nullopt};
    if (m_group->currentIndex() > 0) {
        question.only = m_group->currentData().toString().toStdString();
    }
    return readSummary(logbook, *roster, question);
}

void ReportPage::refresh()
{
    if (!isVisible()) {
        return;
    }
    m_content.reset();
    perform(m_workspace.prompter, [&] { m_content = read(); });
    for (QPushButton* button : {m_save, m_csv, m_print}) {
        button->setEnabled(m_content.has_value());
    }
    m_line->setText(m_content ? QString() : tr("Nobody to report on yet."));
    if (m_content) {
        m_printer->setPageLayout(pageLayoutOf(*m_content, paper()));
    }
    m_preview->updatePreview();
}

void ReportPage::save(const QString& ending)
{
    if (!m_content) {
        return;
    }
    QString proposal = QStringLiteral("%1.%2").arg(titleOf(*m_content), ending);
    proposal.replace(QLatin1Char('/'), QLatin1Char('-'));
    const QString path = m_chooser(this, proposal);
    if (path.isEmpty()) {
        return;
    }
    const auto* summary = std::get_if<GroupSummary>(&*m_content);
    const bool isCsv = ending == QLatin1String("csv") && summary != nullptr;
    const bool isDone = perform(m_workspace.prompter, [&] {
        saveBytes(path.toStdString(),
                  isCsv ? QByteArray::fromStdString(summaryCsv(*summary))
                        : pdfOf(*m_content, paper()));
    });
    m_line->setText(isDone ? tr("Saved: %1").arg(path) : QString());
}

void ReportPage::print()
{
    if (!m_content) {
        return;
    }
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(titleOf(*m_content));
    printer.setPageLayout(pageLayoutOf(*m_content, paper()));
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() == QDialog::Accepted) {
        paintReport(*m_content, printer);
        m_line->setText(tr("Sent to the printer."));
    }
}

} // namespace levelbar::ui
