// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/attendance_list.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QVBoxLayout>

namespace levelbar::ui {

AttendanceList::AttendanceList(QWidget* parent)
    : QWidget(parent)
    , m_model(new AttendanceModel(this))
    , m_filter(new QLineEdit)
    , m_list(new QListView)
    , m_count(new QLabel)
{
    auto* title = new QLabel(tr("&Who came"));
    title->setBuddy(m_filter);
    m_filter->setObjectName(QStringLiteral("attendanceFilter"));
    m_filter->setAccessibleName(tr("Find a person"));
    m_filter->setPlaceholderText(tr("Find anybody by name or id"));
    m_filter->setClearButtonEnabled(true);
    m_filter->installEventFilter(this);
    m_list->setObjectName(QStringLiteral("attendanceList"));
    m_list->setAccessibleName(tr("Who came"));
    m_list->setModel(m_model);
    m_list->setUniformItemSizes(true);
    m_list->setSpacing(2);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->installEventFilter(this);
    m_count->setObjectName(QStringLiteral("attendanceCount"));

    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(title);
    layout->addWidget(m_filter);
    layout->addWidget(m_list, 1);
    layout->addWidget(m_count);
    connect(m_filter, &QLineEdit::textChanged, m_model, &AttendanceModel::setFilter);
    connect(m_model, &AttendanceModel::markWanted, this, &AttendanceList::markWanted);
    showCount();
}

QWidget* AttendanceList::filterField() const
{
    return m_filter;
}

void AttendanceList::setPeople(const FloorReference& reference,
                               const FloorSheet& sheet,
                               const std::vector<MemberId>& members)
{
    const auto current = m_model->memberAt(m_list->currentIndex());
    m_model->setPeople(reference, sheet, members);
    for (int row = 0; current && row < m_model->rowCount(); ++row) {
        if (m_model->memberAt(m_model->index(row)) == current) {
            m_list->setCurrentIndex(m_model->index(row));
        }
    }
    showCount();
}

void AttendanceList::showCount()
{
    m_count->setText(tr("%n came", nullptr, m_model->cameCount()));
}

bool AttendanceList::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress) {
        return QWidget::eventFilter(watched, event);
    }
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool isMark = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (isMark && key->isAutoRepeat()) {
        return true; // a key held down must not mark and unmark
    }
    if (watched == m_filter) {
        return filterKey(key->key());
    }
    if (key->key() == Qt::Key_Space && key->isAutoRepeat()) {
        return true;
    }
    return listKey(key->key());
}

bool AttendanceList::filterKey(int key)
{
    switch (key) {
    case Qt::Key_Down:
        if (m_model->rowCount() > 0) {
            m_list->setFocus();
            if (!m_list->currentIndex().isValid()) {
                m_list->setCurrentIndex(m_model->index(0));
            }
        }
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter: {
        const auto member = m_model->memberAt(m_model->index(0));
        if (!m_filter->text().trimmed().isEmpty() && member && !m_model->hasCome(*member)) {
            Q_EMIT markWanted(*member, true);
        }
        if (member) {
            m_filter->clear();
        }
        return true;
    }
    case Qt::Key_Escape:
        if (m_filter->text().isEmpty()) {
            Q_EMIT left();
        }
        m_filter->clear();
        return true;
    default:
        return false;
    }
}

bool AttendanceList::listKey(int key)
{
    switch (key) {
    case Qt::Key_Space:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        toggle(m_list->currentIndex());
        return true;
    case Qt::Key_Escape:
        Q_EMIT left();
        return true;
    default:
        return false;
    }
}

void AttendanceList::toggle(const QModelIndex& index)
{
    if (const auto member = m_model->memberAt(index)) {
        Q_EMIT markWanted(*member, !m_model->hasCome(*member));
    }
}

} // namespace levelbar::ui
