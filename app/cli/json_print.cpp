// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/json_print.h"

#include <fmt/format.h>

namespace levelbar::cli {

void printJson(const nlohmann::ordered_json& json)
{
    fmt::print("{}\n", json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace));
}

} // namespace levelbar::cli
