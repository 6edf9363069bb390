// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_entry.h"
#include "ui/floor/floor_model.h"
#include "ui/floor/floor_pad.h"
#include "ui/floor/floor_sides.h"
#include "ui/floor/floor_writer.h"
#include "ui/workspace.h"

#include <QWidget>

class QLabel;
class QSplitter;

namespace levelbar::ui {

class AttendanceList;
class ClosingPanel;
class FloorBar;
class FloorGrid;
class FloorStatus;
class PadLine;
class TemplateEditor;
class WallWindow;

// The class floor: a class on a day, who came, and the grid in which every set is written down
// from the keyboard. Looking writes nothing; everything shown is in the logbook.
class FloorPage : public QWidget {
    Q_OBJECT
    Q_DISABLE_COPY_MOVE(FloorPage)

public:
    explicit FloorPage(Workspace& workspace, QWidget* parent = nullptr);
    ~FloorPage() override;

    // Shows that class on that day; writes nothing.
    void openClass(ClassId groupClass, Day day);
    // Whose left and right differ; a class keeps the review it began with.
    void setRoster(const ReviewedRosterPointer& roster);
    // Whose cell the cursor stands on; not stored when on none.
    [[nodiscard]] MemberId memberUnderCursor() const;

protected:
    void showEvent(QShowEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void connectParts();
    void connectPad();
    void showTyped();
    void followPad();
    void toggleWall();
    void toggleTimer();
    void toggleClosing();
    void showWall();
    void heed(const storage::Change& change);
    // Reads again what is shown; says so when that fails.
    void refresh(bool withReference);
    // Before anything was chosen: the class of today that comes next.
    void chooseFirst();
    // The gym's racks, once for a class and day: what is changed by hand stands.
    void takeRacks(ClassId groupClass);
    void restoreCursor(const std::optional<CellKey>& key);
    void showHint();
    void showPlace();
    [[nodiscard]] QString planText(const PlannedSet& planned, const Exercise* exercise) const;
    [[nodiscard]] static QString codesFor(const QString& typed);
    // What hurts somebody who is marked as come; empty when nothing calls for attention.
    [[nodiscard]] QString painText(MemberId member) const;
    void showProgress();
    void mark(MemberId member, bool came);
    void addClass(const QString& name);
    void keepTemplate(const std::vector<TemplateItem>& items);
    void nextPart();
    // True when it went well; else the sentence stands in the status line.
    bool succeeds(const std::optional<QString>& failure);

    Workspace& m_workspace;
    FloorModel m_model;
    FloorWriter m_writer;
    FloorEntry m_entry;
    FloorPad m_pad;
    FloorSides m_sidesToday;
    ReviewedRosterPointer m_roster;
    bool m_isStale = true;
    bool m_isChosen = false; // a class, by hand or at the first look
    std::optional<std::pair<ClassId, Day>> m_racksOf;
    FloorBar* m_bar;
    AttendanceList* m_attendance;
    FloorGrid* m_grid;
    QLabel* m_hint;
    TemplateEditor* m_template;
    ClosingPanel* m_closing;
    PadLine* m_padLine;
    WallWindow* m_wall = nullptr; // once it was wanted
    FloorStatus* m_status;
};

} // namespace levelbar::ui
