// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/incident_store.h"

#include "storage/random_uid.h"
#include "storage/row_query.h"

namespace levelbar::storage {

namespace {

constexpr const char* kAddress = "emergency_address";
constexpr const char* kDefibrillator = "emergency_defibrillator";
constexpr const char* kCaller = "emergency_caller";

constexpr const char* kIncidents =
    "SELECT id, day, minute, member, guest, who, meeting, what, first_aid, witness, follow_up, "
    "written_at, written_by FROM incident WHERE (?1 IS NULL OR member = ?1) "
    "ORDER BY day DESC, minute DESC, id DESC";

Incident readIncident(Columns& columns)
{
    Incident incident;
    incident.id = columns.id<IncidentId>();
    incident.day = columns.day();
    if (const auto minute = columns.maybeWhole()) {
        incident.at = TimeOfDay{*minute};
    }
    incident.member = columns.maybeId<MemberId>();
    incident.guest = columns.maybeId<GuestId>();
    incident.who = columns.text();
    incident.meeting = columns.maybeId<MeetingId>();
    incident.what = columns.text();
    incident.firstAid = columns.text();
    incident.witness = columns.text();
    incident.followUp = columns.text();
    incident.writtenAt = Moment{columns.number()};
    incident.writtenBy = columns.text();
    return incident;
}

void bindIncident(Binder& binder, const Incident& incident)
{
    binder.add(incident.day)
        .add(incident.at ? std::optional(incident.at->minutes) : std::nullopt)
        .add(incident.member)
        .add(incident.guest)
        .add(incident.who)
        .add(incident.meeting)
        .add(incident.what)
        .add(incident.firstAid)
        .add(incident.witness)
        .add(incident.followUp)
        .add(incident.writtenAt)
        .add(incident.writtenBy);
}

std::string settingOf(const Logbook& logbook, const char* name)
{
    const auto found = rowsOf(
        logbook,
        "SELECT value FROM setting WHERE name = ?",
        [](Columns& columns) { return columns.text(); },
        std::string(name));
    return found.empty() ? std::string() : found.front();
}

void setSetting(WriteScope& scope, const char* name, const std::string& value)
{
    if (settingOf(scope.logbook(), name) != value) {
        execute(scope,
                "INSERT INTO setting (name, value) VALUES (?, ?) "
                "ON CONFLICT (name) DO UPDATE SET value = excluded.value",
                std::string(name),
                value);
    }
}

} // namespace

std::vector<Incident> IncidentStore::all() const
{
    return rowsOf(m_logbook, kIncidents, &readIncident, std::optional<MemberId>());
}

std::vector<Incident> IncidentStore::ofMember(MemberId member) const
{
    return rowsOf(m_logbook, kIncidents, &readIncident, member);
}

EmergencyCard IncidentStore::emergencyCard() const
{
    return {settingOf(m_logbook, kAddress),
            settingOf(m_logbook, kDefibrillator),
            settingOf(m_logbook, kCaller)};
}

IncidentId IncidentStore::add(WriteScope& scope, const Incident& incident)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(
            database,
            "INSERT INTO incident (uid, day, minute, member, guest, who, meeting, what, "
            "first_aid, witness, follow_up, written_at, written_by) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        Binder binder(insert);
        binder.addBytes(randomUid());
        bindIncident(binder, incident);
        insert.exec();
        return IncidentId{database.getLastInsertRowid()};
    });
}

void IncidentStore::update(WriteScope& scope, const Incident& incident)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement change(
            scope.logbook().database(),
            "UPDATE incident SET day = ?, minute = ?, member = ?, guest = ?, who = ?, meeting = "
            "?, what = ?, first_aid = ?, witness = ?, follow_up = ?, written_at = ?, "
            "written_by = ? WHERE id = ?");
        Binder binder(change);
        bindIncident(binder, incident);
        binder.add(incident.id);
        change.exec();
    });
}

void IncidentStore::setEmergencyCard(WriteScope& scope, const EmergencyCard& card)
{
    setSetting(scope, kAddress, card.address);
    setSetting(scope, kDefibrillator, card.defibrillator);
    setSetting(scope, kCaller, card.caller);
}

} // namespace levelbar::storage
