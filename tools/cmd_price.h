// grainside price: what a sample costs to make and to land, and how its price stands to that.
#ifndef GRAINSIDE_TOOLS_CMD_PRICE_H
#define GRAINSIDE_TOOLS_CMD_PRICE_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "call_options.h"
#include "dossier_run.h"

namespace grainside::tools {

struct PriceCall {
    DossierOptionsOfCall shared;
    std::vector<std::string> what_if;  // 'ITEM: KEY VALUE'
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_price(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_price(const PriceCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_PRICE_H
