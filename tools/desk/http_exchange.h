// A request and its answer as the desk sees them, free of the types of the HTTP library. Plain data.
#ifndef GRAINSIDE_TOOLS_DESK_HTTP_EXCHANGE_H
#define GRAINSIDE_TOOLS_DESK_HTTP_EXCHANGE_H

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace grainside::desk {

struct HttpRequest {
    std::string method;                        // "GET"
    std::string path;                          // without the query, percent signs decoded
    std::map<std::string, std::string> query;  // decoded; of a name that stands twice the first
    // Names in lower case; one that a client sent several times stands several times.
    std::multimap<std::string, std::string, std::less<>> headers;
    std::string body;

    // The first of that name, empty where there is none.
    std::string_view header(std::string_view name) const {
        const auto found = headers.find(name);
        return found == headers.end() ? std::string_view() : std::string_view(found->second);
    }
    std::string_view parameter(const std::string& name) const {
        const auto found = query.find(name);
        return found == query.end() ? std::string_view() : std::string_view(found->second);
    }
};

struct HttpAnswer {
    int status = 200;
    std::string type = "application/json; charset=utf-8";
    std::string body;
    std::vector<std::pair<std::string, std::string>> headers = {};  // beside those that every answer has
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_HTTP_EXCHANGE_H
