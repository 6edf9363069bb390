// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/setup_card.h"
#include "core/gym/setup_proposal.h"
#include "core/review/history.h"
#include "ui/pages/setup_sources.h"
#include "ui/workspace.h"

#include <QFrame>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;

namespace levelbar::ui {

// How one person's station is set up for one exercise: holes with their heights, bench angle,
// marks. What nobody tried yet is proposed and marked so. In the list + and - change the chosen
// line, Enter confirms the whole card.
class SetupCardPanel : public QFrame {
    Q_OBJECT

public:
    explicit SetupCardPanel(Workspace& workspace, QWidget* parent = nullptr);

    // `history` and `library` are only read during the call. Hidden for exercises that nothing is
    // set up for.
    void show(const MemberHistory& history, const Library& library, ExerciseId exercise);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    enum class Part { Hook, Safety, Angle };

    // One line of the list.
    struct Line {
        Part part = Part::Hook;
        int value = 0;
        QString text;
        QString detail; // the range of the doubt, or whose hole it is
    };

    void makeLayout();
    void load(const MemberHistory& history, const Library& library);
    void fillRacks();
    void fillLines();
    [[nodiscard]] bool hasHoles() const;
    [[nodiscard]] QString stateText() const;
    void addHole(Part part, const std::optional<int>& stored);
    // Fills in the line for a hole of the card; what is to be said beside it.
    [[nodiscard]] QString readStored(Line& line, int stored) const;
    void addAngle();
    void step(int direction);
    void confirm();
    void keepTexts();
    void keep(const SetupCard& card);
    [[nodiscard]] SetupCard asShown() const;
    [[nodiscard]] const Rack& chosenRack() const;
    [[nodiscard]] std::optional<HoleProposal> proposal(Part part) const;
    [[nodiscard]] const std::vector<SetupExample>& examplesOf(Part part) const;

    Workspace& m_workspace;
    Exercise m_exercise;
    std::optional<int> m_usualAngle;
    BodySize m_body;
    SetupCard m_card; // as stored, or empty
    bool m_isStored = false;
    SetupSources m_sources;
    std::vector<Line> m_lines;
    QLabel* m_state; // confirmed, or what to do
    QComboBox* m_rack;
    QListWidget* m_list;
    QLineEdit* m_grip;
    QLineEdit* m_feet;
    QLineEdit* m_note;
};

} // namespace levelbar::ui
