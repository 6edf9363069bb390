// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/side_card.h"

#include "core/sides/side_prescription.h"
#include "ui/side_text.h"
#include "ui/words.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr int kLongestReason = 200;
constexpr int kLines = 3;

} // namespace

SideCard::SideCard(QWidget* parent)
    : QWidget(parent)
    , m_words(new QLabel(this))
    , m_open(new QPushButton(tr("&Open person"), this))
    , m_reason(new QLineEdit(this))
    , m_keep(new QPushButton(tr("&Keep reason"), this))
    , m_end(new QPushButton(tr("Reason &ends today"), this))
    , m_training(buildTraining())
{
    setObjectName(QStringLiteral("sideCard"));
    m_words->setObjectName(QStringLiteral("sideCardWords"));
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::RichText);
    m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_words->setMinimumHeight(kLines * m_words->fontMetrics().height() + 4);
    m_open->setObjectName(QStringLiteral("sideCardOpen"));
    m_reason->setObjectName(QStringLiteral("sideReason"));
    m_reason->setAccessibleName(tr("Known reason for this difference"));
    m_reason->setPlaceholderText(tr("Known reason, like: plays tennis, right-handed"));
    m_reason->setMaxLength(kLongestReason);
    m_keep->setObjectName(QStringLiteral("sideReasonKeep"));
    m_keep->setToolTip(tr("Keeps this name off the lists until something new happens"));
    m_end->setObjectName(QStringLiteral("sideReasonEnd"));
    auto* row = new QHBoxLayout;
    row->addWidget(m_open);
    row->addWidget(m_reason, 1);
    row->addWidget(m_keep);
    row->addWidget(m_end);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 4, 0, 0);
    layout->addWidget(m_words);
    layout->addWidget(m_training);
    layout->addLayout(row);
    const auto keep = [this] {
        if (m_row && !m_reason->text().trimmed().isEmpty()) {
            Q_EMIT reasonWanted(m_reason->text().trimmed());
        }
    };
    connect(m_keep, &QPushButton::clicked, this, keep);
    connect(m_reason, &QLineEdit::returnPressed, this, keep);
    connect(m_end, &QPushButton::clicked, this, &SideCard::reasonEnded);
    connect(m_open, &QPushButton::clicked, this, [this] {
        if (m_row) {
            Q_EMIT opened(m_row->member);
        }
    });
    show(std::nullopt, {});
}

QWidget* SideCard::buildTraining()
{
    auto* training = new QWidget(this);
    m_trained = new QLabel(training);
    m_trained->setObjectName(QStringLiteral("sideTrained"));
    m_trained->setTextFormat(Qt::PlainText);
    m_trained->setWordWrap(true);
    m_extra = new QCheckBox(tr("One set &more for the weaker side"), training);
    m_extra->setObjectName(QStringLiteral("sideExtraSet"));
    m_extra->setToolTip(tr("At most three sets to two, for eight weeks. That more sets for the "
                           "weaker side help more has not been shown."));
    m_endTraining = new QPushButton(tr("End &training it"), training);
    m_endTraining->setObjectName(QStringLiteral("sideTrainingEnd"));
    m_endTraining->setToolTip(tr("Back to equal sets; the starting side alternates again"));
    auto* row = new QHBoxLayout(training);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_trained, 1);
    row->addWidget(m_extra);
    row->addWidget(m_endTraining);
    connect(m_extra, &QCheckBox::clicked, this, &SideCard::extraSetWanted);
    connect(m_endTraining, &QPushButton::clicked, this, &SideCard::trainingEnded);
    return training;
}

void SideCard::showTraining(Day asOf)
{
    const bool isListed = m_row && m_row->side.tier == SideTier::Act && m_row->side.weaker &&
                          m_row->side.measure.isTrainable();
    m_training->setVisible(m_running.has_value() || isListed);
    m_extra->setChecked(m_running && m_running->wantsExtraSet);
    m_endTraining->setEnabled(m_running.has_value());
    if (!m_running) {
        m_trained->setText(tr("On the floor: weaker side first, its counted reps are the other "
                              "one's limit. Begins with the next counted set."));
        return;
    }
    const int days = asOf - m_running->started;
    QString text = tr("Trained weaker side first since %1.").arg(dayText(m_running->started));
    if (m_running->wantsExtraSet && days >= kExtraSetDays) {
        text += QLatin1Char(' ') + tr("The eight weeks of one set more are over.");
    }
    m_trained->setText(text);
}

void SideCard::show(const std::optional<SidesRow>& row,
                    Day asOf,
                    const std::optional<SidePrescription>& running)
{
    m_running = running;
    const bool isOther = !row || !m_row || row->member != m_row->member ||
                         !(row->side.measure == m_row->side.measure) ||
                         row->side.reason != m_row->side.reason;
    m_row = row;
    for (QWidget* widget : {static_cast<QWidget*>(m_open),
                            static_cast<QWidget*>(m_reason),
                            static_cast<QWidget*>(m_keep)}) {
        widget->setEnabled(row.has_value());
    }
    m_end->setEnabled(row && row->side.reason);
    showTraining(asOf);
    if (!row) {
        m_words->setText(tr("Choose somebody to see why they are on a list, or on none."));
        m_reason->clear();
        return;
    }
    if (isOther) {
        m_reason->setText(row->side.reason ? plain(row->side.reason->text) : QString());
    }
    const QString name = plain(row->name.empty() ? row->code : row->name);
    m_words->setText(QStringLiteral("<b>%1 · %2</b><br>%3")
                         .arg(name.toHtmlEscaped(),
                              plain(row->side.measure.name).toHtmlEscaped(),
                              sideStory(row->side, asOf).toHtmlEscaped()));
}

void SideCard::beginReason()
{
    m_reason->setFocus(Qt::OtherFocusReason);
    m_reason->selectAll();
}

} // namespace levelbar::ui
