"""What the ledger shows to be amiss: bakes that changed without a correction, and recipes that only it knows."""

from collections.abc import Iterable, Iterator

from generator.diagnostics.diagnostic import Diagnostics
from generator.history.changes import Harm
from generator.history.corrections import correction_diagnostics
from generator.history.ledger import LEDGER, Facts
from generator.history.unexplained import unexplained, unknown_recipes
from generator.present.changed import told_changes
from generator.present.facts import facts_of
from generator.present.recipe import Setting
from generator.source.document import Folder


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
