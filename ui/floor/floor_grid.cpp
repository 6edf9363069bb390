// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_grid.h"

#include "ui/floor/floor_cell_delegate.h"
#include "ui/floor/floor_colours.h"
#include "ui/floor/floor_header.h"

#include <QAbstractButton>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kWidestColumn = 190;
constexpr int kBesideText = 32; // mark and margins
constexpr int kNoteMargin = 14; // its frame and margins

// What the grid wants before any shortcut of the window gets it.
bool isOurs(const QKeyEvent& event)
{
    const auto modifiers = event.modifiers() & ~Qt::KeypadModifier & ~Qt::ShiftModifier;
    if (event.matches(QKeySequence::Undo)) {
        return true;
    }
    return modifiers == Qt::NoModifier && !event.text().isEmpty() && event.key() != Qt::Key_Tab;
}

bool isPrintable(const QString& text)
{
    return text.size() == 1 && text.front().isPrint();
}

} // namespace

FloorGrid::FloorGrid(FloorModel& model, FloorEntry& entry, QWidget* parent)
    : QTableView(parent)
    , m_model(model)
    , m_entry(entry)
    , m_fault(new QLabel(viewport()))
{
    setObjectName(QStringLiteral("floorGrid"));
    setAccessibleName(tr("Planned and done sets, one row a person"));
    setHorizontalHeader(new FloorHeader(this));
    setVerticalHeader(new FloorNames(this));
    setModel(&model);
    setItemDelegate(new FloorCellDelegate(this));
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setShowGrid(false);
    setCornerButtonEnabled(false);
    m_corner = findChild<QAbstractButton*>(QString(), Qt::FindDirectChildrenOnly);
    if (m_corner != nullptr) {
        m_corner->installEventFilter(this);
    }
    m_fault->setObjectName(QStringLiteral("floorCellFault"));
    m_fault->setAutoFillBackground(true);
    m_fault->setBackgroundRole(QPalette::Base);
    m_fault->setForegroundRole(QPalette::Text);
    m_fault->setFrameShape(QFrame::Box);
    m_fault->setMargin(4);
    m_fault->setWordWrap(true);
    m_fault->setAttribute(Qt::WA_TransparentForMouseEvents);
    m_fault->hide();
    connect(&model, &QAbstractItemModel::modelReset, this, &FloorGrid::fitColumns);
    connect(&model, &QAbstractItemModel::dataChanged, this, &FloorGrid::placeFault);
}

std::optional<CellKey> FloorGrid::currentKey() const
{
    return m_model.keyAt(currentIndex());
}

void FloorGrid::goTo(const QModelIndex& index)
{
    if (index.isValid()) {
        setCurrentIndex(index);
        scrollTo(index);
    }
}

void FloorGrid::fitColumns()
{
    QStyleOptionViewItem option;
    initViewItemOption(&option);
    int width = option.fontMetrics.horizontalAdvance(QStringLiteral("62.5 kg × 12")) + kBesideText;
    for (int column = 0; column < m_model.columnCount(); ++column) {
        for (int row = 0; row < m_model.rowCount(); ++row) {
            const QModelIndex index = m_model.index(row, column);
            width = std::max(width, itemDelegate()->sizeHint(option, index).width());
        }
    }
    horizontalHeader()->setDefaultSectionSize(std::min(width, kWidestColumn));
}

void FloorGrid::placeFault()
{
    const QString sentence = currentIndex().data(FloorModel::FaultRole).toString();
    m_fault->setVisible(!sentence.isEmpty());
    if (sentence.isEmpty()) {
        return;
    }
    QPalette colours = palette();
    for (const auto role : {QPalette::WindowText, QPalette::Text}) {
        colours.setColor(role, faultColour(palette()));
    }
    m_fault->setPalette(colours);
    m_fault->setText(sentence);
    const int natural = m_fault->fontMetrics().horizontalAdvance(sentence) + kNoteMargin;
    m_fault->setFixedWidth(std::min(natural, viewport()->width()));
    m_fault->setFixedHeight(m_fault->heightForWidth(m_fault->width()));
    const QRect cell = visualRect(currentIndex());
    const bool fitsBelow = cell.bottom() + m_fault->height() < viewport()->height();
    const int top = fitsBelow ? cell.bottom() + 1 : cell.top() - m_fault->height();
    const int left =
        std::clamp(cell.left(), 0, std::max(0, viewport()->width() - m_fault->width()));
    m_fault->move(left, top);
    m_fault->raise();
}

bool FloorGrid::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride && currentIndex().isValid() &&
        isOurs(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QTableView::event(event);
}

// The corner carries the heading of the names, in the same colours as they.
bool FloorGrid::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_corner || event->type() != QEvent::Paint) {
        return QTableView::eventFilter(watched, event);
    }
    constexpr int kMargin = 12;
    QPainter painter(m_corner);
    const QRect rect = m_corner->rect();
    painter.fillRect(rect, groupColour(palette(), true));
    painter.setPen(lineColour(palette()));
    painter.drawLine(rect.bottomLeft(), rect.bottomRight());
    painter.setPen(dimTextColour(palette()));
    painter.drawText(
        rect.adjusted(kMargin, 0, 0, -kMargin / 3), Qt::AlignLeft | Qt::AlignBottom, tr("Person"));
    return true;
}

void FloorGrid::keyPressEvent(QKeyEvent* event)
{
    const auto key = currentKey();
    if (!key && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) {
        event->accept();
        goTo(m_model.nextOpen({}));
        return;
    }
    if (event->matches(QKeySequence::Undo) && !key) {
        event->ignore();
        return;
    }
    if (key && handleKey(*event, *key)) {
        event->accept();
        return;
    }
    QTableView::keyPressEvent(event);
}

bool FloorGrid::handleKey(const QKeyEvent& event, const CellKey& key)
{
    switch (event.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        // A key held down must not log the whole class.
        if (!event.isAutoRepeat()) {
            pressEnter(key);
        }
        return true;
    case Qt::Key_Backspace:
        pressBackspace(key, event.isAutoRepeat());
        return true;
    case Qt::Key_Escape:
        if (!m_entry.abandon(key)) {
            Q_EMIT leftToPad();
        }
        return true;
    default:
        break;
    }
    if (event.matches(QKeySequence::Undo)) {
        if (!m_entry.abandon(key) && !event.isAutoRepeat()) {
            Q_EMIT takeBackWanted();
        }
        return true;
    }
    const auto modifiers = event.modifiers() & ~Qt::KeypadModifier & ~Qt::ShiftModifier;
    if (modifiers != Qt::NoModifier || !isPrintable(event.text())) {
        return false;
    }
    if (!event.isAutoRepeat()) {
        handleText(event.text(), key);
    }
    return true;
}

void FloorGrid::pressEnter(const CellKey& key)
{
    const auto draft = m_model.draft(key);
    const FloorEntry::Outcome outcome = m_entry.enter(key);
    const bool wasLoad = draft && draft->isLoad;
    if (outcome == FloorEntry::Outcome::Refused || wasLoad) {
        placeFault();
        return;
    }
    const QModelIndex next = m_model.nextOpen(m_model.indexOf(key));
    if (next.isValid()) {
        goTo(next);
    } else {
        Q_EMIT nothingLeft();
    }
}

void FloorGrid::pressBackspace(const CellKey& key, bool isRepeat)
{
    if (!m_entry.erase(key) && !isRepeat) {
        Q_EMIT takeBackWanted();
    }
}

bool FloorGrid::handleText(const QString& text, const CellKey& key)
{
    const auto draft = m_model.draft(key);
    const bool isLoad = draft && draft->isLoad;
    if (isLoad) {
        m_entry.type(key, text);
        return true;
    }
    if (text.compare(QLatin1String("l"), Qt::CaseInsensitive) == 0 || text == QLatin1String("*")) {
        m_entry.beginLoad(key);
        return true;
    }
    if (!draft || draft->amount.isEmpty()) {
        if (text == QLatin1String("+") || text == QLatin1String("-")) {
            m_entry.stepLoad(key, text == QLatin1String("+") ? 1 : -1);
            return true;
        }
        if (text == QLatin1String(" ")) {
            return false;
        }
    }
    m_entry.type(key, text);
    return true;
}

void FloorGrid::focusOutEvent(QFocusEvent* event)
{
    const bool staysHere =
        event->reason() == Qt::ActiveWindowFocusReason || event->reason() == Qt::PopupFocusReason;
    const auto key = currentKey();
    if (key && !staysHere) {
        m_entry.leave(*key);
    }
    QTableView::focusOutEvent(event);
}

// Another page, or the window closes: what was typed is stored first.
void FloorGrid::hideEvent(QHideEvent* event)
{
    const auto key = currentKey();
    if (key && !event->spontaneous()) {
        m_entry.leave(*key);
    }
    QTableView::hideEvent(event);
}

void FloorGrid::resizeEvent(QResizeEvent* event)
{
    QTableView::resizeEvent(event);
    if (currentIndex().isValid()) {
        scrollTo(currentIndex()); // a narrower window must not lose the cursor
    }
    placeFault();
}

void FloorGrid::scrollContentsBy(int dx, int dy)
{
    QTableView::scrollContentsBy(dx, dy);
    // Names of exercises stay in sight, so they move within their sections.
    horizontalHeader()->viewport()->update();
    placeFault();
}

void FloorGrid::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    if (const auto left = m_model.keyAt(previous)) {
        m_entry.leave(*left);
    }
    QTableView::currentChanged(current, previous);
    verticalHeader()->viewport()->update(); // the name of the cursor's row
    placeFault();
    Q_EMIT cursorMoved();
}

} // namespace levelbar::ui
