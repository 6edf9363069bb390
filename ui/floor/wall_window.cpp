// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/wall_window.h"

#include "ui/floor/floor_colours.h"
#include "ui/floor/floor_words.h"
#include "ui/words.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QScreen>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kFullHeight = 1080;
constexpr int kLeastXHeight = 42; // px at the full height: 40 and a little
constexpr int kMargin = 14;
constexpr std::size_t kMostNext = 4;

QString workText(const FloorExercise& exercise, Side side)
{
    QString name = plain(exercise.exercise.name);
    switch (side) {
    case Side::Left:
        return WallWindow::tr("left, %1").arg(name);
    case Side::Right:
        return WallWindow::tr("right, %1").arg(name);
    case Side::Both:
        break;
    }
    return name;
}

QString amountText(const FloorExercise& exercise, const PlannedSet& planned)
{
    const bool isReps = exercise.exercise.amount == AmountKind::Reps;
    QString amount;
    if (planned.amount) {
        amount = isReps ? QLocale().toString(*planned.amount)
                        : WallWindow::tr("%1 s").arg(QLocale().toString(*planned.amount / 10));
    }
    // What is added to a body's weight is nobody else's business.
    const bool isLifted =
        exercise.exercise.load == LoadKind::External && planned.load.thousandths() > 0;
    if (!isLifted) {
        return isReps && !amount.isEmpty() ? WallWindow::tr("× %1").arg(amount) : amount;
    }
    const QString load = ui::loadText(planned.load);
    return amount.isEmpty() ? load : WallWindow::tr("%1 × %2").arg(load, amount);
}

void describeTurn(WallRack& rack, const PadCell& cell, const FloorBook& book)
{
    const FloorExercise* exercise = book.find(cell.planned.exercise);
    if (exercise == nullptr) {
        return;
    }
    rack.work = workText(*exercise, cell.planned.side);
    rack.amount = amountText(*exercise, cell.planned);
    // A load that nobody knows yet is no empty bar.
    rack.isBar =
        exercise->exercise.implement == Implement::Barbell && cell.planned.load.thousandths() > 0;
    const auto made =
        rack.isBar && exercise->loads ? exercise->loads->exactly(cell.planned.load) : std::nullopt;
    if (made) {
        rack.plates = made->eachSide;
    }
}

QString bibsText(const std::vector<int>& bibs)
{
    QStringList words;
    for (const int bib : bibs) {
        words << QLocale().toString(bib);
    }
    return words.join(QStringLiteral("  "));
}

// Whether a set is still to come at a station, in the round that is on or a later one.
bool isToCome(const PadCell& cell, const ClassFloor& hour, const Station& station)
{
    return cell.station == station.number && cell.isOpen() && !cell.isHeld &&
           cell.round >= hour.round;
}

std::optional<int> holeOf(const HookHoles& holes, MemberId member, ExerciseId exercise)
{
    const auto hole = holes.find({member, exercise});
    return hole == holes.end() ? std::nullopt : std::optional(hole->second);
}

bool isNamed(const WallRack& rack, int bib)
{
    return bib == *rack.bib ||
           std::find(rack.next.begin(), rack.next.end(), bib) != rack.next.end();
}

} // namespace

std::vector<WallRack> wallOf(const ClassFloor& hour, const FloorBook& book, const HookHoles& holes)
{
    std::vector<WallRack> racks;
    for (const Station& station : hour.stations) {
        WallRack rack;
        rack.number = station.number;
        rack.isThere = station.isThere;
        for (const PadCell& cell : hour.cells) {
            const FloorPerson* who = person(hour, cell.planned.member);
            if (who == nullptr || !isToCome(cell, hour, station)) {
                continue;
            }
            if (!rack.bib) {
                rack.bib = who->bib;
                describeTurn(rack, cell, book);
                rack.hole = holeOf(holes, who->member, cell.planned.exercise);
            } else if (rack.next.size() < kMostNext && !isNamed(rack, who->bib)) {
                rack.next.push_back(who->bib);
            }
        }
        racks.push_back(std::move(rack));
    }
    return racks;
}

WallWindow::WallWindow(QWidget* parent)
    : QWidget(parent, Qt::Window)
{
    setObjectName(QStringLiteral("wallWindow"));
    setAccessibleName(tr("Wall: whose turn it is at each rack"));
    setWindowTitle(tr("Wall – Levelbar"));
    setAttribute(Qt::WA_ShowWithoutActivating); // the hand stays on the pad
    resize(1280, 720);
    const auto screens = QGuiApplication::screens();
    if (screens.size() > 1) {
        setGeometry(screens.at(1)->geometry());
        setWindowState(Qt::WindowFullScreen);
    }
    connect(&m_timer, &WorkRest::changed, this, [this] { update(); });
}

void WallWindow::showRacks(std::vector<WallRack> racks)
{
    m_racks = std::move(racks);
    update();
}

QFont WallWindow::wallFont() const
{
    QFont font = this->font();
    font.setBold(true);
    constexpr int kProbe = 100;
    font.setPixelSize(kProbe);
    const double ratio = QFontMetricsF(font).xHeight() / kProbe;
    const double wanted = kLeastXHeight * static_cast<double>(height()) / kFullHeight;
    font.setPixelSize(std::max(8, static_cast<int>(std::ceil(wanted / std::max(0.3, ratio)))));
    return font;
}

int WallWindow::xHeight() const
{
    return static_cast<int>(QFontMetricsF(wallFont()).xHeight());
}

void WallWindow::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().color(QPalette::Base));
    painter.setFont(wallFont());
    const bool hasTimer = !m_timer.isFresh();
    const int strip = hasTimer ? painter.fontMetrics().height() : 0;
    if (hasTimer) {
        paintTimer(painter, {0, height() - strip, width(), strip});
    }
    const auto count = static_cast<int>(m_racks.size());
    if (count == 0) {
        return;
    }
    const int columns = count <= 2 ? count : (count <= 4 ? 2 : (count <= 9 ? 3 : 4));
    const int rows = (count + columns - 1) / columns;
    for (int at = 0; at < count; ++at) {
        const QRect place(at % columns * width() / columns,
                          at / columns * (height() - strip) / rows,
                          width() / columns,
                          (height() - strip) / rows);
        paintRack(painter, place, m_racks[static_cast<std::size_t>(at)]);
    }
}

void WallWindow::paintTimer(QPainter& painter, const QRect& place) const
{
    const bool isWork = m_timer.isWork();
    const QColor ink = palette().color(QPalette::Text);
    const QColor ground = palette().color(QPalette::Base);
    painter.fillRect(place, isWork ? ink : ground); // full while at work, a frame while at rest
    painter.setPen(QPen(ink, 4));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(place.adjusted(2, 2, -2, -2));
    painter.setPen(isWork ? ground : ink);
    painter.drawText(place, Qt::AlignCenter, m_timer.text());
}

void WallWindow::paintRack(QPainter& painter, const QRect& place, const WallRack& rack) const
{
    const QColor ink = palette().color(QPalette::Text);
    painter.setPen(QPen(strongLineColour(palette()), 3));
    painter.drawRect(place.adjusted(1, 1, -2, -2));
    const QRect inner = place.adjusted(kMargin, kMargin / 2, -kMargin, -kMargin / 2);
    const QFontMetrics metrics = painter.fontMetrics();
    const int line = std::min(metrics.height(), inner.height() / 5);
    const auto row = [&](int number) {
        return QRect(inner.left(), inner.top() + number * inner.height() / 5, inner.width(), line);
    };
    const QString number = tr("R%1").arg(rack.number);
    const QRect badge(inner.left(), inner.top(), metrics.horizontalAdvance(number) + kMargin, line);
    painter.fillRect(badge, ink);
    painter.setPen(palette().color(QPalette::Base));
    painter.drawText(badge, Qt::AlignCenter, number);
    painter.setPen(ink);
    if (!rack.isThere || !rack.bib) {
        painter.drawText(row(2), Qt::AlignCenter, rack.isThere ? tr("done") : tr("not in use"));
        return;
    }
    painter.drawText(row(0), Qt::AlignRight | Qt::AlignVCenter, QLocale().toString(*rack.bib));
    if (rack.hole) {
        painter.drawText(row(0), Qt::AlignCenter, tr("hole %1").arg(*rack.hole));
    }
    painter.drawText(row(1),
                     Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(rack.work, Qt::ElideRight, inner.width()));
    painter.drawText(row(2), Qt::AlignLeft | Qt::AlignVCenter, rack.amount);
    if (rack.isBar) {
        paintBar(painter, row(3), rack);
        painter.setPen(ink);
    }
    if (!rack.next.empty()) {
        const QString next = tr("then %1").arg(bibsText(rack.next));
        painter.setPen(dimTextColour(palette()));
        painter.drawText(row(4),
                         Qt::AlignLeft | Qt::AlignVCenter,
                         metrics.elidedText(next, Qt::ElideRight, inner.width()));
    }
}

// One end of the bar: sleeve from the left, the innermost plate first, each with its number;
// heavier plates are taller.
void WallWindow::paintBar(QPainter& painter, const QRect& place, const WallRack& rack) const
{
    const QColor ink = palette().color(QPalette::Text);
    const int middle = place.center().y();
    painter.fillRect(QRect(place.left(), middle - 4, place.width(), 8),
                     strongLineColour(palette()));
    double heaviest = 1.0;
    int wanted = 0;
    const QFontMetrics metrics = painter.fontMetrics();
    for (const Mass& plate : rack.plates) {
        heaviest = std::max(heaviest, plate.kilograms());
        wanted += metrics.horizontalAdvance(plain(plate.number())) + kMargin + 4;
    }
    painter.save();
    if (wanted > place.width() - kMargin) { // many plates: as large as they fit
        QFont smaller = painter.font();
        smaller.setPixelSize(
            std::max(8, smaller.pixelSize() * (place.width() - kMargin) / std::max(1, wanted)));
        painter.setFont(smaller);
    }
    int x = place.left() + kMargin;
    for (const Mass& plate : rack.plates) {
        const QString number = plain(plate.number());
        const int width = painter.fontMetrics().horizontalAdvance(number) + kMargin;
        const double share = 0.7 + 0.3 * plate.kilograms() / heaviest;
        const int height = static_cast<int>(share * place.height());
        const QRect face(x, middle - height / 2, width, height);
        painter.fillRect(face, palette().color(QPalette::Base));
        painter.setPen(QPen(ink, 4));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(face, 6, 6);
        painter.drawText(face, Qt::AlignCenter, number);
        x += width + 4;
    }
    painter.restore();
    if (rack.plates.empty()) {
        painter.setPen(ink);
        painter.fillRect(QRect(place.left() + kMargin,
                               place.top(),
                               metrics.horizontalAdvance(tr("bar only")) + kMargin,
                               place.height()),
                         palette().color(QPalette::Base));
        painter.drawText(
            place.adjusted(2 * kMargin, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, tr("bar only"));
    }
}

void WallWindow::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape || event->key() == Qt::Key_F11) {
        hide();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace levelbar::ui
