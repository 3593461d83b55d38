"""Who publishes, under which name, and where a page stands in the publication."""

from generator.present.trails import trail_of
from generator.present.views import SiteView
from generator.render.structured_data.script import Node, known


def website(site: SiteView) -> Node:
    return known(
        {
            "@type": "WebSite",
            "@id": f"{site.url}#website",
            "name": site.title,
            "url": site.url,
            "description": site.lead,
            "inLanguage": site.language,
            "author": author(site),
            "publisher": publisher(site),
        }
    )


def part_of(site: SiteView) -> Node:
    """The publication as other pages name it."""
    return {"@type": "WebSite", "@id": f"{site.url}#website", "name": site.title, "url": site.url}


def author(site: SiteView) -> Node:
    """The maker: the one who bakes, films and writes."""
    return {"@type": "Person", "name": site.maker, "url": site.url}


def publisher(site: SiteView) -> Node:
    return {"@type": "Organization", "name": site.title, "url": site.url}


def breadcrumbs(site: SiteView, *, path: str, title: str) -> Node:
    """The way from the home page to this one: what stands above the page, and the page itself, last and unlinked."""
    trail = ((link.title, link.path) for link in trail_of(path, title))
    steps = ((site.title, ""), *trail)
    return {
        "@type": "BreadcrumbList",
        "itemListElement": [
            {"@type": "ListItem", "position": number, "name": name}
            | ({"item": {"@id": site.url + place}} if number < len(steps) else {})
            for number, (name, place) in enumerate(steps, start=1)
        ],
    }
