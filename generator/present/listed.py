"""What the lists of the site say of a bake beside its view: worked out of the bake alone, whatever else there is."""

from dataclasses import dataclass

from generator.declaration.lines import formula_allergens
from generator.formula.old_address import OldAddress
from generator.present.allergen_table import Declared
from generator.present.page_link import PageLink
from generator.present.reading import component_links
from generator.present.recipe import Setting
from generator.present.search import search_bake
from generator.present.search_views import SearchBake
from generator.present.views import RecipeView


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """`declared` is its row of the table of allergens, `found` what the search finds, without what the table says,
    `links` are its components on the site, `was` its old addresses. What is not on the site is in no list."""

    declared: Declared | None
    found: SearchBake | None
    links: tuple[PageLink, ...]
    was: tuple[OldAddress, ...]


def listed_of(view: RecipeView, setting: Setting) -> Listed:
    formula = setting.book[view.name]
    if not view.on_site:
        return Listed(declared=None, found=None, links=(), was=formula.about.was)
    declared = Declared(
        title=view.title,
        path=view.path,
        declaration=setting.declarations[view.name][setting.settings.region],
        traces=formula_allergens(formula, book=setting.book).traces,
    )
    return Listed(
        declared=declared,
        found=search_bake(view, formula),
        links=component_links(view),
        was=formula.about.was,
    )
