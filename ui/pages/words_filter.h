// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSortFilterProxyModel>
#include <QStringList>

namespace levelbar::ui {

// Filters as one types: every word must be found somewhere in the row's search text, which the
// first column of the source model gives under `searchRole`.
class WordsFilter : public QSortFilterProxyModel {
public:
    WordsFilter(int searchRole, QObject* parent)
        : QSortFilterProxyModel(parent)
        , m_searchRole(searchRole)
    {
    }

    void setWords(const QString& text)
    {
        m_words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
        invalidateFilter();
    }

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override
    {
        if (m_words.isEmpty()) {
            return true;
        }
        const QString text = sourceModel()->index(row, 0, parent).data(m_searchRole).toString();
        for (const QString& word : m_words) {
            if (!text.contains(word, Qt::CaseInsensitive)) {
                return false;
            }
        }
        return true;
    }

private:
    int m_searchRole;
    QStringList m_words;
};

} // namespace levelbar::ui
