# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# levelbar_embed(TARGET FUNCTION FILE): compiles FILE's bytes into TARGET as
# `std::string_view levelbar::resources::FUNCTION()`, so that the programs start from any folder.
function(levelbar_embed target function file)
    set(output ${CMAKE_CURRENT_BINARY_DIR}/${function}.cpp)
    add_custom_command(
        OUTPUT ${output}
        COMMAND ${CMAKE_COMMAND} -DINPUT=${file} -DOUTPUT=${output} -DFUNCTION=${function}
                -P ${PROJECT_SOURCE_DIR}/cmake/embed_file.cmake
        DEPENDS ${file} ${PROJECT_SOURCE_DIR}/cmake/embed_file.cmake
        COMMENT "Embedding ${function}"
        VERBATIM)
    target_sources(${target} PRIVATE ${output})
endfunction()
