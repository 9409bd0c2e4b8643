// What the sample costs to make, and how its price stands to that.
#include "report/html/page_parts.h"

namespace grainside::report {

void write_price(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("price")}});
    page.heading(1, "Cost and price");
    html.element("p", "The dossier holds no costs.");
    html.end();
}

}  // namespace grainside::report
