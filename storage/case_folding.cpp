// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/case_folding.h"

#include <unicode/normalizer2.h>
#include <unicode/unistr.h>

namespace levelbar::storage {

std::string foldCase(std::string_view text)
{
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* normalizer = icu::Normalizer2::getNFCInstance(status);
    icu::UnicodeString folded = icu::UnicodeString::fromUTF8(
        icu::StringPiece(text.data(), static_cast<int32_t>(text.size())));
    if (U_SUCCESS(status)) {
        folded = normalizer->normalize(folded, status);
    }
    folded.foldCase();
    std::string result;
    folded.toUTF8String(result);
    return result;
}

} // namespace levelbar::storage
