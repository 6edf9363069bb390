// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/rack_holes.h"

#include <QWidget>

namespace levelbar::ui {

// A rack from the side: its upright with the holes to scale, their numbers and heights.
class RackPicture : public QWidget {
    Q_OBJECT

public:
    explicit RackPicture(QWidget* parent = nullptr);

    void show(const RackHoles& holes);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    RackHoles m_holes;
};

} // namespace levelbar::ui
