"""The page for an address that leads nowhere.

A host shows it at any depth, so relative links would miss: it carries its style inside itself and links by
absolute addresses.
"""

from markupsafe import Markup

from generator.render.site.page import Page
from generator.render.theme import theme_file
from generator.wording.speech import say


def missing_page(theme: str) -> Page:
    """404.html, complete in itself."""
    style = theme_file(theme, "site", "missing.css").read_text(encoding="utf-8")
    return Page(
        template="404.html",
        path="404.html",
        title=say("No such page"),
        description="",
        content={"style": Markup(style.strip())},
    )
