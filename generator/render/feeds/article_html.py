"""A journal post as HTML for a feed."""

from markupsafe import Markup

from generator.present.views import ArticleView
from generator.render.feeds.pieces import items, link, photograph, prose
from generator.render.feeds.places import absolute
from generator.wording.speech import say


def article_html(view: ArticleView, site: str) -> Markup:
    """The whole post, and the bakes it speaks of. `site` is the address of the publication."""
    bakes = items(link(bake.title, absolute(bake.path, site)) for bake in view.bakes)
    told = (
        photograph(view.photo),
        Markup("<p><strong>{}</strong></p>\n").format(view.lead) if view.lead else Markup(),
        prose(view.markdown, page=view.url, site=site),
        Markup("<h2>{}</h2>\n").format(say("Bakes")) + bakes if bakes else Markup(),
    )
    return Markup().join(told)
