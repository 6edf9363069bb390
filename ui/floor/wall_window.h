// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"
#include "ui/floor/pad_hour.h"
#include "ui/floor/work_rest.h"

#include <QWidget>

#include <optional>
#include <vector>

namespace levelbar::ui {

// What the wall shows of one rack: whose turn it is, and who is next.
struct WallRack {
    int number = 1;
    bool isThere = true;
    std::optional<int> bib; // nothing: all sets known
    QString work;           // "Back squat", with its side
    QString amount;         // "62.5 kg × 8"; without a load "× 8"
    bool isBar = false;
    std::vector<Mass> plates; // one side's, the innermost first
    std::optional<int> hole;
    std::vector<int> next; // bibs
};

// By rack, from the keys' round on. Nothing of what a body weighs or how it is: no names, no kg for
// body-weight work.
[[nodiscard]] std::vector<WallRack>
wallOf(const ClassFloor& hour, const FloorBook& book, const HookHoles& holes);

// A second window to be read from across the room: letters at least 40 px high without ascenders
// at 1920 × 1080, larger as the window allows.
class WallWindow : public QWidget {
    Q_OBJECT

public:
    explicit WallWindow(QWidget* parent = nullptr);

    void showRacks(std::vector<WallRack> racks);

    [[nodiscard]] WorkRest& timer() { return m_timer; }

    // In px, at the window's present size.
    [[nodiscard]] int xHeight() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    [[nodiscard]] QFont wallFont() const;
    void paintRack(QPainter& painter, const QRect& place, const WallRack& rack) const;
    void paintBar(QPainter& painter, const QRect& place, const WallRack& rack) const;
    void paintTimer(QPainter& painter, const QRect& place) const;

    std::vector<WallRack> m_racks;
    WorkRest m_timer;
};

} // namespace levelbar::ui
