// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/prompter.h"

#include <gmock/gmock.h>

namespace levelbar::ui {

// Answers for people in tests. Use it strict: a question or a message that was not expected
// fails the test.
class ScriptedPrompter : public Prompter {
public:
    MOCK_METHOD(void, tellFailure, (const QString& what, const QString& whatNext), (override));
    MOCK_METHOD(bool, confirm, (const QString& question, const QString& action), (override));
};

} // namespace levelbar::ui
