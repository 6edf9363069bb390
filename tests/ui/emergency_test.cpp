// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/contact_store.h"
#include "storage/incident_store.h"
#include "storage/today_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/emergency/emergency_window.h"

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::emergency_test {
namespace {

using storage::ContactStore;
using storage::EmergencyContact;
using storage::IncidentStore;
using testing::_;
using testing::HasSubstr;
using testing::Return;
using tests::kNow;

const Day kToday{20600};

class EmergencyTest : public testing::Test {
protected:
    void SetUp() override
    {
        mara = tests::addMember(logbook, "M1", "Mara Linden");
        noor = tests::addMember(logbook, "M2", "Noor Ashby");
    }

    void open(MemberId about = {})
    {
        window.open(about);
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    }

    template <typename T> T& part(const char* name)
    {
        auto* found = window.findChild<T*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }

    void press(const char* name) { part<QPushButton>(name).click(); }

    void type(const char* name, const char* text)
    {
        part<QLineEdit>(name).setText(QLatin1String(text));
    }

    void write(const char* name, const char* text)
    {
        part<QPlainTextEdit>(name).setPlainText(QLatin1String(text));
    }

    std::string textOf(const char* name) { return part<QLabel>(name).text().toStdString(); }

    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    testing::StrictMock<ScriptedPrompter> prompter;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    tests::TemporaryFolder folder;
    QString path = QString::fromStdString((folder / "report.pdf").string());
    EmergencyWindow window{workspace, [this](QWidget*, const QString&) { return path; }};
    MemberId mara;
    MemberId noor;
};

TEST_F(EmergencyTest, SaysWhatIsMissingUntilTheCardIsWritten)
{
    open();
    EXPECT_THAT(textOf("emergencyAddress"), HasSubstr("not written down yet"));
    press("emergencyChange");
    type("cardAddress", "Mill Lane 4, yard door, first floor");
    type("cardDefibrillator", "Beside the front desk");
    type("cardCaller", "Front desk");
    press("cardKeep");
    EXPECT_EQ(textOf("emergencyAddress"), "Mill Lane 4, yard door, first floor");
    EXPECT_EQ(textOf("emergencyDefibrillator"), "Beside the front desk");
    EXPECT_EQ(textOf("emergencyCall"), "Front desk");
    EXPECT_EQ(IncidentStore(logbook).emergencyCard().caller, "Front desk");
}

TEST_F(EmergencyTest, ShowsTheContactsOfThePersonInFront)
{
    {
        storage::Action action(logbook, storage::ActionKind::EditMember, kNow);
        ContactStore::set(action, noor, {{"Imke Ashby", "sister", "01 555 0101"}});
        action.commit();
    }
    open(noor);
    EXPECT_EQ(textOf("emergencyContacts"), "Imke Ashby, sister: 01 555 0101");
    part<QComboBox>("emergencyPerson").setCurrentIndex(0);
    EXPECT_EQ(textOf("emergencyContacts"), "Nobody is written down to call for them.");
}

TEST_F(EmergencyTest, KeepsContactsInTheOrderOfCallingAndTakesThemBack)
{
    open(mara);
    press("emergencyChange");
    type("contactName1", "Joris Linden");
    press("cardKeep");
    EXPECT_THAT(textOf("cardSaid"), HasSubstr("telephone")) << "half a contact helps nobody";
    EXPECT_TRUE(ContactStore(logbook).of(mara).empty());
    type("contactPhone1", "01 555 0102");
    type("contactName2", "Ada Rook");
    type("contactPhone2", "01 555 0103");
    press("cardKeep");
    EXPECT_EQ(ContactStore(logbook).of(mara),
              (std::vector<EmergencyContact>{{"Joris Linden", "", "01 555 0102"},
                                             {"Ada Rook", "", "01 555 0103"}}));
    storage::takeBack(logbook, storage::lastTakeable(logbook).value(), kNow);
    EXPECT_TRUE(ContactStore(logbook).of(mara).empty());
}

TEST_F(EmergencyTest, AReportIsKeptWithWhatFollows)
{
    open(noor);
    press("emergencyReport");
    press("incidentKeep");
    EXPECT_THAT(textOf("incidentSaid"), HasSubstr("say what happened"));
    write("incidentWhat", "Stumbled over a plate");
    type("incidentTime", "18:25");
    type("incidentFollowUp", "Ring her");
    type("incidentDue", "2");
    type("incidentAuthor", "AB");
    press("incidentKeep");
    const auto all = IncidentStore(logbook).all();
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].member, noor);
    EXPECT_EQ(all[0].at, (TimeOfDay{18 * 60 + 25}));
    EXPECT_EQ(all[0].what, "Stumbled over a plate");
    const auto followUps = storage::TodayStore(logbook).followUps(kToday);
    ASSERT_EQ(followUps.size(), 1U);
    EXPECT_EQ(followUps[0].due, kToday + 2);
    EXPECT_EQ(followUps[0].member, noor);
    EXPECT_EQ(part<QListWidget>("incidentList").count(), 1);
}

TEST_F(EmergencyTest, AnybodyCanBeWrittenAbout)
{
    open();
    press("emergencyReport");
    part<QComboBox>("incidentPerson").setCurrentText(QStringLiteral("A visitor in a red coat"));
    write("incidentWhat", "Fainted at the door");
    press("incidentKeep");
    ASSERT_EQ(IncidentStore(logbook).all().size(), 1U);
    EXPECT_EQ(IncidentStore(logbook).all()[0].who, "A visitor in a red coat");
    EXPECT_EQ(IncidentStore(logbook).all()[0].member, std::nullopt);
}

TEST_F(EmergencyTest, AReportIsPutRightAndNotWrittenTwice)
{
    open();
    press("emergencyReport");
    write("incidentWhat", "Fainted");
    press("incidentKeep");
    write("incidentWhat", "Fainted, was awake after a minute");
    press("incidentSave");
    ASSERT_EQ(IncidentStore(logbook).all().size(), 1U);
    EXPECT_EQ(IncidentStore(logbook).all()[0].what, "Fainted, was awake after a minute");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF"));
}

TEST_F(EmergencyTest, WhatIsTypedIsNotLostByClosing)
{
    open();
    press("emergencyReport");
    write("incidentWhat", "Half a sentence");
    EXPECT_CALL(prompter, confirm(_, _)).WillOnce(Return(false));
    EXPECT_FALSE(window.close());
    EXPECT_EQ(part<QPlainTextEdit>("incidentWhat").toPlainText().toStdString(), "Half a sentence");
    EXPECT_CALL(prompter, confirm(_, _)).WillOnce(Return(true));
    EXPECT_TRUE(window.close());
    EXPECT_TRUE(IncidentStore(logbook).all().empty());
}

TEST_F(EmergencyTest, ATimeThatIsNoneIsRefusedAndNothingIsWritten)
{
    open();
    press("emergencyReport");
    write("incidentWhat", "Fell");
    type("incidentTime", "25:70");
    press("incidentKeep");
    EXPECT_THAT(textOf("incidentSaid"), HasSubstr("Not kept"));
    EXPECT_TRUE(IncidentStore(logbook).all().empty());
}

} // namespace
} // namespace levelbar::ui::emergency_test
