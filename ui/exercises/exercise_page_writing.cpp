// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
// What the page writes: each function is one action.
#include "storage/exercise_detail_store.h"
#include "storage/ladder_store.h"
#include "storage/library_store.h"
#include "ui/change_notifier.h"
#include "ui/exercises/exercise_page.h"
#include "ui/exercises/ladder_editor.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QLineEdit>

namespace levelbar::ui {

void ExercisePage::hideChosen()
{
    const Exercise* exercise = chosen();
    if (exercise == nullptr) {
        return;
    }
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::HideExercise, m_workspace.clock.now());
        storage::LibraryStore::setHidden(action, exercise->id, !exercise->isHidden);
        m_workspace.notifier.announce(action.commit());
    });
}

void ExercisePage::keep(const TypedExercise& typed)
{
    perform(m_workspace.prompter, [&] {
        const auto same =
            storage::LibraryStore(m_workspace.logbook).findExercise(typed.exercise.name);
        if (same && same->id != typed.exercise.id) {
            m_editor->refuse(tr("an exercise named %1 is there already").arg(plain(same->name)));
            return;
        }
        const bool isNew = !typed.exercise.id.isStored();
        storage::Action action(m_workspace.logbook,
                               isNew ? storage::ActionKind::AddExercise
                                     : storage::ActionKind::EditExercise,
                               m_workspace.clock.now());
        Exercise exercise = typed.exercise;
        if (isNew) {
            exercise.id = storage::LibraryStore::addExercise(action, exercise);
        } else {
            storage::LibraryStore::updateExercise(action, exercise);
        }
        storage::ExerciseDetailStore::set(action, exercise, typed.detail);
        if (typed.ladder) {
            const Library now = storage::LibraryStore(m_workspace.logbook).all();
            Ladder ladder = *typed.ladder;
            ladder.rungs.at(typed.rung).exerciseKey = now.exercise(exercise.id)->key;
            const auto checked = checkLadder(ladder, now.exercises);
            if (!checked) {
                m_editor->refuse(words(checked.error()));
                return; // without commit() nothing happened
            }
            storage::LadderStore::put(action, *checked);
        }
        m_workspace.notifier.announce(action.commit());
        m_filter->clear();
        choose(exercise.id);
        leaveEditor();
    });
}

void ExercisePage::keepLadder(const Ladder& ladder)
{
    const auto checked = checkLadder(ladder, m_library.exercises);
    if (!checked) {
        m_ladderEditor->refuse(words(checked.error()));
        return;
    }
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditLadder, m_workspace.clock.now());
        storage::LadderStore::put(action, *checked);
        m_workspace.notifier.announce(action.commit());
        leaveEditor();
    });
}

void ExercisePage::dropLadder(const Ladder& ladder)
{
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditLadder, m_workspace.clock.now());
        storage::LadderStore::removeOwn(action, ladder.key);
        m_workspace.notifier.announce(action.commit());
        leaveEditor();
    });
}

} // namespace levelbar::ui
