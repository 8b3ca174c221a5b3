// What a shop works out, as JSON: drift, what is due, which wrench to take, what is in doubt.
#pragma once

#include "json_document.h"
#include "shop_views.h"

namespace steadyturn {

OrderedJson toolDriftJson(const ToolDrift& drift);
OrderedJson overviewJson(const ToolOverview& overview);
OrderedJson choiceJson(const FastenerChoice& choice);
OrderedJson recallJson(const RecallList& recall);

}  // namespace steadyturn
