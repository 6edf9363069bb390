# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# usage: awk -v study=grip|leg|press -f to_tests.awk FILE > tests.csv
# Days of 2026, counted from 5 January.
function dateOf(days,    month, day, lengths, i) {
    split("31 28 31 30 31 30 31 31 30 31 30 31", lengths, " ")
    day = 5 + days
    for (i = 1; day > lengths[i]; ++i)
        day -= lengths[i]
    return sprintf("2026-%02d-%02d", i, day)
}
function grip(side, first,    trial, value, effort) {
    for (trial = 1; trial <= 3; ++trial) {
        value = $(first + 2 * (trial - 1))
        effort = $(first + 2 * (trial - 1) + 1)
        if (value != "" && value > 0)
            printf "%s,%s,Grip strength,%s,%d,%s,%s\n", dateOf(0), $1, side, trial, value,
                effort == "max" ? "yes" : "no"
    }
}
BEGIN {
    FS = ","
    name["leg press"] = study == "leg" ? "Single-leg press" : "Leg press"
    name["knee extension"] = "Single-leg knee extension"
    name["bench press"] = "Barbell bench press"
    name["biceps curl"] = "Biceps curl"
    print "date,member_id,test,side,trial,value,valid"
}
{ sub(/\r$/, "") }
NR == 1 { next }
study == "grip" { grip("right", 8); grip("left", 14) }
study == "leg" && $7 != "" {
    printf "%s,%s,One-rep max: %s,%s,1,%s,yes\n", dateOf(7 * $3), $1, name[$4], $5, $7
}
study == "press" && $5 != "" {
    printf "%s,%s,One-rep max: %s,both,1,%s,yes\n", dateOf(7 * $2), $1, name[$4], $5
}
