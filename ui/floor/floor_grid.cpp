// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_grid.h"

#include "ui/floor/floor_model.h"
#include "ui/theme.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

namespace levelbar::ui {

namespace {

constexpr int kColumnWidth = 142;
constexpr int kNameWidth = 190;
constexpr int kRowHeight = 40;
constexpr int kMostTyped = 14;

// Shape leads: a filled square for counted, a hollow one for accepted, a cross for failed, nothing
// while not known.
class CellPainter : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter,
               const QStyleOptionViewItem& option,
               const QModelIndex& index) const override
    {
        const QPalette& palette = option.palette;
        const Colours tones = colours(palette);
        const bool isCurrent = (option.state & QStyle::State_HasFocus) != 0 ||
                               (option.state & QStyle::State_Selected) != 0;
        const QString typed = index.data(FloorModel::TypedRole).toString();
        const bool isRefused = !index.data(FloorModel::FaultRole).toString().isEmpty();
        const auto state =
            static_cast<FloorModel::State>(index.data(FloorModel::StateRole).toInt());
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->fillRect(option.rect,
                          isCurrent ? palette.color(QPalette::AlternateBase)
                                    : palette.color(QPalette::Base));
        if (isCurrent || isRefused) {
            painter->setPen(
                QPen(isRefused ? tones.warning : palette.color(QPalette::Highlight), 3.0));
            painter->drawRect(QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5));
        }
        const QRect place = option.rect.adjusted(26, 0, -4, 0);
        if (!typed.isEmpty()) {
            QFont large = option.font;
            large.setBold(true);
            large.setPointSizeF(large.pointSizeF() * 1.25);
            painter->setFont(large);
            painter->setPen(isRefused ? tones.warning : palette.color(QPalette::Text));
            painter->drawText(place, Qt::AlignVCenter | Qt::AlignLeft, typed + QLatin1Char('_'));
        } else {
            paintState(*painter, option, state);
            painter->setFont(option.font);
            painter->setPen(state == FloorModel::Open ? tones.quiet
                                                      : palette.color(QPalette::Text));
            painter->drawText(place, Qt::AlignVCenter | Qt::AlignLeft, index.data().toString());
        }
        painter->restore();
    }

private:
    static void
    paintState(QPainter& painter, const QStyleOptionViewItem& option, FloorModel::State state)
    {
        const QColor ink = option.palette.color(QPalette::Text);
        const QRectF mark(option.rect.left() + 9, option.rect.center().y() - 5, 11, 11);
        painter.setPen(QPen(ink, 1.8));
        painter.setBrush(Qt::NoBrush);
        switch (state) {
        case FloorModel::Open:
            break;
        case FloorModel::Accepted:
            painter.drawRect(mark);
            break;
        case FloorModel::Counted:
            painter.setBrush(ink);
            painter.drawRect(mark);
            break;
        case FloorModel::Failed:
            painter.drawLine(mark.topLeft(), mark.bottomRight());
            painter.drawLine(mark.topRight(), mark.bottomLeft());
            break;
        }
    }
};

bool isTypable(QChar c)
{
    return c.isDigit() || c == QLatin1Char('.') || c == QLatin1Char(',');
}

} // namespace

FloorGrid::FloorGrid(FloorModel& model, QWidget* parent)
    : QTableView(parent)
    , m_floor(model)
{
    setObjectName(QStringLiteral("floorGrid"));
    setAccessibleName(tr("Sets of the class: people down, sets across"));
    setModel(&model);
    setItemDelegate(new CellPainter(this));
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    horizontalHeader()->setDefaultSectionSize(kColumnWidth);
    horizontalHeader()->setDefaultAlignment(
        Qt::Alignment::fromInt(Qt::AlignLeft | Qt::AlignVCenter | int{Qt::TextWordWrap}));
    horizontalHeader()->setFixedHeight(3 * fontMetrics().height() + 14);
    verticalHeader()->setDefaultSectionSize(kRowHeight);
    verticalHeader()->setFixedWidth(kNameWidth);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
}

QModelIndex FloorGrid::nextOpen(const QModelIndex& from) const
{
    const int rows = m_floor.rowCount();
    const int cells = rows * m_floor.columnCount();
    const int start = from.isValid() ? from.column() * rows + from.row() : -1;
    for (int step = 1; step <= cells; ++step) {
        const int place = (start + step) % cells;
        const QModelIndex cell = m_floor.index(place % rows, place / rows);
        if (m_floor.isOpen(cell)) {
            return cell;
        }
    }
    return {};
}

bool FloorGrid::typeInto(const QModelIndex& cell, const QString& text)
{
    const QString before = m_floor.typed(cell);
    const bool isLoad = before.startsWith(QLatin1Char('l'));
    const QChar key = text.size() == 1 ? text.at(0).toLower() : QChar();
    const bool startsLoad = before.isEmpty() && key == QLatin1Char('l');
    const bool isUnit = isLoad && QStringLiteral("kgbl ").contains(key);
    if (key.isNull() || !(isTypable(key) || startsLoad || isUnit) || before.size() >= kMostTyped) {
        return false;
    }
    m_floor.setTyped(cell, before + key);
    return true;
}

void FloorGrid::keyPressEvent(QKeyEvent* event)
{
    const QModelIndex cell = currentIndex();
    if (!cell.isValid()) {
        QTableView::keyPressEvent(event);
        return;
    }
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!event->isAutoRepeat()) { // a held key does not run on
            Q_EMIT storeWanted(cell);
        }
        return;
    case Qt::Key_Escape:
        m_floor.setTyped(cell, QString());
        return;
    case Qt::Key_Backspace:
        if (m_floor.typed(cell).isEmpty()) {
            if (!event->isAutoRepeat()) {
                Q_EMIT takeBackWanted();
            }
        } else {
            m_floor.setTyped(cell, m_floor.typed(cell).chopped(1));
        }
        return;
    case Qt::Key_Plus:
    case Qt::Key_Minus:
        Q_EMIT loadStepWanted(cell, event->key() == Qt::Key_Plus ? 1 : -1);
        return;
    default:
        break;
    }
    const bool isPlain = (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) == 0;
    if (isPlain && typeInto(cell, event->text())) {
        return;
    }
    QTableView::keyPressEvent(event);
}

void FloorGrid::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    QTableView::currentChanged(current, previous);
    // A cell is stored as it is left; a refused one waits with its text.
    const bool hasText = previous.isValid() && !m_floor.typed(previous).isEmpty();
    if (hasText && previous.data(FloorModel::FaultRole).toString().isEmpty()) {
        Q_EMIT storeWanted(previous);
    }
    Q_EMIT placeChanged(current);
}

} // namespace levelbar::ui
