# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# levelbar_compile_by_room(TARGET [SIZE]): where LEVELBAR_BY_ROOM is on (every preset but dev and
# coverage), the sources of one room (folder) are compiled together, ten (or SIZE) at a time: a third
# of the time of one by one. It asks one thing of the code: the unnamed namespaces of a room share a
# scope, so two helpers of a room never bear one name. A test file has a namespace of its own, named
# after the file, and need not care. Call it after the target's last source.
function(levelbar_compile_by_room target)
    if(NOT LEVELBAR_BY_ROOM)
        return()
    endif()
    set(size 10)
    if(ARGC GREATER 1)
        set(size ${ARGV1})
    endif()
    set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
    get_target_property(sources ${target} SOURCES)
    get_target_property(folder ${target} SOURCE_DIR)
    set(rooms "")
    foreach(source IN LISTS sources)
        if(NOT source MATCHES "\\.cpp$")
            continue()
        endif()
        cmake_path(ABSOLUTE_PATH source BASE_DIRECTORY ${folder} NORMALIZE)
        cmake_path(RELATIVE_PATH source BASE_DIRECTORY ${PROJECT_SOURCE_DIR} OUTPUT_VARIABLE inside)
        cmake_path(GET inside PARENT_PATH room)
        string(MAKE_C_IDENTIFIER "${room}" room)
        if(NOT room IN_LIST rooms)
            list(APPEND rooms ${room})
            set(count_${room} 0)
        endif()
        math(EXPR part "${count_${room}} / ${size}")
        math(EXPR count_${room} "${count_${room}} + 1")
        set_source_files_properties(${source} TARGET_DIRECTORY ${target}
            PROPERTIES UNITY_GROUP ${room}_${part})
    endforeach()
endfunction()
