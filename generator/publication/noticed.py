"""What the ledger shows to be amiss: bakes that changed without a correction, and recipes that only it knows."""

from collections.abc import Iterable, Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostics
from generator.formula.article import Article
from generator.formula.old_address import taken_addresses
from generator.history.changes import Harm
from generator.history.corrections import correction_diagnostics
from generator.history.ledger import LEDGER, Facts
from generator.history.unexplained import unexplained, unknown_recipes
from generator.present.changed import told_changes
from generator.present.facts import facts_of
from generator.present.moved import KEPT, Standing, standing_where
from generator.present.recipe import Setting
from generator.source.document import Folder

MOVED_CODES = frozenset({"S075"})


def notice(setting: Setting, folder: Folder, names: Iterable[str]) -> Diagnostics:
    """Warnings about published bakes and about the ledger itself. `names` are all recipes, the faulty too."""
    ledger, book = setting.ledger, setting.book
    known = (name for name in ledger.recipes() if name in book)
    published = [name for name in known if setting.on_site(book[name].about.published)]
    facts = {name: facts_of(book[name], setting) for name in published}
    changed = unexplained(book, facts, ledger=ledger, texts=folder.texts, tell=_told)
    stated = (each for one in book.values() for each in correction_diagnostics(one, spoons=setting.spoons))
    return (*changed, *unknown_recipes(folder.ledger, names, LEDGER), *stated)


def _told(before: Facts, after: Facts) -> Iterator[str]:
    return (each.words for each in told_changes(before, after) if each.harm < Harm.WORDS)


def moved_diagnostics(bakes: Mapping[str, Standing], articles: tuple[Article, ...]) -> Diagnostics:
    """Old addresses where something else stands (S075): it depends on all bakes and pages there are."""
    old = (*(each.was for each in bakes.values()), *(each.was for each in articles))
    standing = standing_where({name: (each.path, each.kinds) for name, each in bakes.items()}, articles)
    return tuple(taken_addresses((each for some in old for each in some), standing, kept=KEPT))
