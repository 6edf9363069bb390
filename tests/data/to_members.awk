# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# usage: awk -v study=grip|leg|press -f to_members.awk FILE > members.csv
BEGIN {
    FS = ","
    print "member_id,sex,height_cm,body_mass_kg,dominant_side"
}
{ sub(/\r$/, "") }
NR == 1 || seen[$1]++ { next }
study == "grip" {
    hand = $6 == "right" || $6 == "left" ? $6 : ""
    printf "%s,%s,%s,%s,%s\n", $1, $3, $4, $5, hand
}
study == "leg" { printf "%s,%s,,,\n", $1, $2 }
study == "press" { printf "%s,,,,\n", $1 }
