// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/import.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/scripted_prompter.h"
#include "ui/pages/member_page.h"
#include "ui/report/chart_saver.h"
#include "ui/report/report_page.h"

#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QMenu>
#include <QPushButton>
#include <QSignalSpy>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace levelbar::ui::report_page_test {
namespace {

using tests::kNow;

const Day kToday = parseDay("2026-11-20").value();

class ReportPageTest : public testing::Test {
protected:
    ReportPageTest()
    {
        std::string sets = "date,member_id,exercise,set,side,load,unit,reps,rir\n";
        for (int week = 1; week < 12; ++week) {
            sets += isoText(kToday - 7 * week) + ",M1,Barbell bench press,1,both,60,kg,8,2\n";
        }
        storage::ImportRequest request;
        request.members = {"members.csv",
                           "member_id,name,group\nM1,Ann Levelhead,Yard\nM2,עדה,Yard\n"};
        request.sets = {"sets.csv", sets};
        EXPECT_TRUE(storage::importCsv(logbook, request, kNow).faults.empty());
        QSignalSpy ready(&review, &BackgroundReview::ready);
        review.request();
        EXPECT_TRUE(ready.wait(10'000));
    }

    MemberId member(const char* code) { return storage::MemberStore(logbook).find(code)->id; }

    // Saves whatever is asked under the fixed name; says what name was proposed.
    FileChooser to(const char* file, QString& proposed)
    {
        return [this, file, &proposed](QWidget*, const QString& proposal) {
            proposed = proposal;
            return QString::fromStdString((folder / file).string());
        };
    }

    QByteArray saved(const char* file)
    {
        QFile in(QString::fromStdString((folder / file).string()));
        return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
    }

    tests::TemporaryFolder folder;
    testing::StrictMock<ScriptedPrompter> prompter;
    storage::Logbook logbook = storage::Logbook::inMemory(kNow);
    ChangeNotifier notifier;
    Workspace workspace{logbook, notifier, {[] { return kNow; }, [] { return kToday; }}, prompter};
    BackgroundReview review{logbook, notifier, workspace.clock};
};

TEST_F(ReportPageTest, APersonsPageIsShownAndSaved)
{
    ReportPage page(workspace, review);
    page.show();
    page.openPerson(member("M2"));
    ASSERT_TRUE(page.content());
    EXPECT_EQ(std::get<PersonReport>(*page.content()).member.code, "M2");
    QString proposed;
    page.setChooser(to("a.pdf", proposed));
    page.findChild<QPushButton*>(QStringLiteral("reportSave"))->click();
    EXPECT_EQ(proposed, QStringLiteral("Person M2.pdf"));
    EXPECT_TRUE(saved("a.pdf").startsWith("%PDF"));
}

TEST_F(ReportPageTest, EveryKindHasItsChoicesAndItsPaper)
{
    ReportPage page(workspace, review);
    page.resize(1000, 700);
    page.show();
    auto* kind = page.findChild<QComboBox*>(QStringLiteral("reportKind"));
    kind->setCurrentIndex(ReportPage::Home);
    ASSERT_TRUE(page.content());
    EXPECT_TRUE(std::holds_alternative<TakeAway>(*page.content()));
    EXPECT_EQ(pageLayoutOf(*page.content(), Paper::A4).pageSize().id(), QPageSize::A5);
    EXPECT_TRUE(page.findChild<QWidget*>(QStringLiteral("reportHome"))->isVisible());
    EXPECT_FALSE(page.findChild<QWidget*>(QStringLiteral("reportCsv"))->isVisible());

    kind->setCurrentIndex(ReportPage::Summary);
    ASSERT_TRUE(page.content());
    EXPECT_TRUE(std::get<GroupSummary>(*page.content()).all.isWithheld) << "one person";
    EXPECT_EQ(pageLayoutOf(*page.content(), Paper::Letter).pageSize().id(), QPageSize::Letter);
    EXPECT_FALSE(page.findChild<QWidget*>(QStringLiteral("reportPerson"))->isVisible());
    QString proposed;
    page.setChooser(to("s.csv", proposed));
    page.findChild<QPushButton*>(QStringLiteral("reportCsv"))->click();
    EXPECT_TRUE(saved("s.csv").startsWith("from,to,group,"));
    EXPECT_EQ(proposed, QStringLiteral("Summary 2026-08-29 to 2026-11-20.csv"));
}

TEST_F(ReportPageTest, AFileThatCannotBeWrittenIsSaidAndLeavesNothing)
{
    ReportPage page(workspace, review);
    page.show();
    page.setChooser([](QWidget*, const QString&) { return QStringLiteral("/no/such/dir/a.pdf"); });
    EXPECT_CALL(prompter, tellFailure);
    page.findChild<QPushButton*>(QStringLiteral("reportSave"))->click();
}

TEST_F(ReportPageTest, ThePersonPageLeadsToItAndSavesItsChart)
{
    MemberPage page(workspace, review);
    page.open(member("M1"));
    QSignalSpy wanted(&page, &MemberPage::printWanted);
    page.findChild<QPushButton*>(QStringLiteral("memberPrint"))->click();
    EXPECT_EQ(wanted.count(), 1);
    auto* saver = page.findChild<ChartSaver*>();
    QString proposed;
    for (const auto& [ending, start] :
         {std::pair{"png", "\x89PNG"}, std::pair{"svg", "<?xml"}, std::pair{"csv", "row,date"}}) {
        const std::string file = std::string("c.") + ending;
        saver->setChooser(to(file.c_str(), proposed));
        saver->findChild<QAction*>(QStringLiteral("saveChart_%1").arg(QLatin1String(ending)))
            ->trigger();
        EXPECT_TRUE(saved(file.c_str()).startsWith(start)) << ending;
        EXPECT_EQ(proposed, QStringLiteral("M1 Barbell bench press.%1").arg(QLatin1String(ending)));
    }
    const QByteArray svg = saved("c.svg");
    EXPECT_TRUE(svg.contains("Barbell bench press"));
    EXPECT_FALSE(svg.contains("<image")) << "shapes, no bitmap";
    page.open(member("M2"));
    EXPECT_FALSE(saver->isEnabled()) << "nothing to save";
}

} // namespace
} // namespace levelbar::ui::report_page_test
