# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# Headers that most files of a target read anyway are compiled once: parsing them was over half of
# every build. Sources still include all they use; -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON builds
# without, which is also what clang-tidy reads (it cannot read GCC's).
set(LEVELBAR_STANDARD_HEADERS
    <algorithm> <array> <cmath> <cstdint> <filesystem> <functional> <map> <memory> <optional> <set>
    <span> <string> <string_view> <vector>)
set(LEVELBAR_WIDGET_HEADERS
    ${LEVELBAR_STANDARD_HEADERS} <QAbstractTableModel> <QApplication> <QComboBox> <QDateEdit>
    <QHBoxLayout> <QHeaderView> <QKeyEvent> <QLabel> <QLineEdit> <QListWidget> <QLocale> <QPainter>
    <QPushButton> <QSettings> <QSpinBox> <QTableView> <QThread> <QTimer> <QVBoxLayout>
    <QtCharts/QChartView> <QtCharts/QDateTimeAxis> <QtCharts/QLineSeries>)
set(LEVELBAR_COMMAND_HEADERS
    ${LEVELBAR_STANDARD_HEADERS} <CLI/CLI.hpp> <fmt/format.h> <nlohmann/json.hpp>)
set(LEVELBAR_TEST_HEADERS
    ${LEVELBAR_STANDARD_HEADERS} <gmock/gmock.h> <gtest/gtest.h>)
