"""Three bakes in German and French words, as somebody would have written them who speaks nothing else."""

import re
from collections.abc import Mapping
from dataclasses import replace
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_words import Style, one_measure, written
from tests.importer.corpus.truth import Bake, Line

_Told = tuple[str, str, tuple[str, ...], tuple[str, ...], tuple[str, ...], str, str]

_BEFORE_VOWEL = re.compile(r"\bde (?=[aeiouéœ])")
_GERMAN = Style(fraction="comma", units=(("tsp", "TL"), ("tbsp", "EL"), ("pinch", "Prise")), to="–")
_FRENCH = Style(
    fraction="comma",
    units=(
        ("tsp", "c. à café de"),
        ("tbsp", "c. à soupe de"),
        ("g", "g de"),
        ("ml", "ml de"),
        ("pinch", "pincée de"),
    ),
    to=" à ",
)


def german(bake: Bake, random: Random) -> Text:
    out = [bake.title, "", bake.lead, "", "Zutaten"]
    for name, lines in bake.parts:
        out += ["", f"Für {name}:"] if name else [""]
        out += [f"- {written(line, _GERMAN)}" for line in lines]
    out += ["", "Zubereitung", ""]
    out += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    out += [
        "",
        f"Ergibt {bake.makes}.",
        f"Haltbar: {bake.keeps}.",
        "",
        f"Gutes Gelingen! {'😊' * random.randint(1, 2)}",
    ]
    return Text(name="rezept.txt", data="\n".join(out) + "\n")


def french(bake: Bake, random: Random) -> Text:
    out = [bake.title.upper(), "", bake.lead, "", f"Pour {bake.makes}", "", "Ingrédients :"]
    for name, lines in bake.parts:
        out += ["", f"Pour {name} :"] if name else []
        out += ["– " + _BEFORE_VOWEL.sub("d'", written(line, _FRENCH)) for line in lines]
    out += ["", "Préparation :", ""]
    out += [f"{number}) {step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", f"Se garde {bake.keeps}.", "", "Bon appétit" + " !" * random.randint(1, 2)]
    return Text(name="recette.txt", data="\n".join(out) + "\n")


def in_german(bake: Bake) -> Bake | None:
    return _abroad(bake, _IN_GERMAN)


def in_french(bake: Bake) -> Bake | None:
    return _abroad(bake, _IN_FRENCH)


def _abroad(bake: Bake, told: Mapping[str, _Told]) -> Bake | None:
    """The bake in other words and metric amounts; times and degrees stay words, which nobody promises to read."""
    words = told.get(bake.title)
    if words is None:
        return None
    title, lead, names, items, steps, makes, keeps = words
    single = one_measure(bake, metric=True)
    lines = iter(items)
    parts = []
    for (_, ours), name in zip(single.parts, names, strict=True):
        parts.append((name, tuple(_renamed(line, next(lines)) for line in ours)))
    return replace(
        bake,
        title=title,
        lead=lead,
        parts=tuple(parts),
        steps=steps,
        makes=makes,
        keeps=keeps,
        times=(),
        heats=(),
    )


def _renamed(line: Line, name: str) -> Line:
    if not line.measures:
        text, _, item = name.partition(" = ")
        return replace(line, item=item or text, text=text)
    item, _, preparation = name.partition(", ")
    return replace(line, item=item, preparation=preparation, size="", text="")


_IN_GERMAN: Mapping[str, _Told] = {
    "Saturday country loaf": (
        "Samstagsbrot",
        "Der Vorteig vom Freitagabend macht die meiste Arbeit.",
        ("den Vorteig", "den Teig"),
        (
            "Weizenmehl",
            "Wasser, kühl",
            "Trockenhefe",
            "Weizenmehl",
            "Roggenmehl",
            "Wasser, lauwarm",
            "Salz",
            "Trockenhefe",
            "Reismehl",
        ),
        (
            "Für den Vorteig Mehl, Wasser und Hefe verrühren und zugedeckt über Nacht stehen lassen.",
            "Alles für den Teig mit dem Vorteig mischen und 20 Minuten ruhen lassen.",
            "12 Minuten von Hand kneten, dann 2 Stunden gehen lassen.",
            "Rund formen, in den bemehlten Korb setzen und 45 bis 60 Minuten gehen lassen.",
            "Im heißen Topf bei 245 °C 25 Minuten mit Deckel backen, dann 20 Minuten ohne.",
        ),
        "1 großes Brot",
        "5 Tage",
    ),
    "Orange almond cake without flour": (
        "Orangen-Mandel-Kuchen ohne Mehl",
        "Saftig und duftend, für eine Freundin, die keinen Weizen verträgt.",
        ("",),
        (
            "Orangen, ungeschält",
            "Eier",
            "gemahlene Mandeln",
            "Zucker",
            "Backpulver",
            "Salz",
            "eine Handvoll Mandelblättchen = Mandelblättchen",
        ),
        (
            "Die Orangen im Ganzen 90 Minuten kochen, abgießen und die Kerne entfernen.",
            "Die Orangen fein pürieren.",
            "Eier und Zucker 6 Minuten schaumig schlagen.",
            "Mandeln, Backpulver, Salz und Püree unterheben und in eine Springform (23 cm) füllen.",
            "Mit den Mandelblättchen bestreuen und bei 170 °C 50 Minuten backen.",
        ),
        "10 Stücke",
        "5 Tage im Kühlschrank",
    ),
    "Potato dinner rolls": (
        "Kartoffelbrötchen",
        "Der Rest vom Kartoffelbrei hält sie tagelang weich.",
        ("",),
        (
            "Kartoffeln, gekocht und zerdrückt",
            "Milch",
            "Ei",
            "Butter, geschmolzen",
            "Zucker",
            "Weizenmehl",
            "Salz",
            "frische Hefe, zerbröckelt",
        ),
        (
            "Die Milch auf 35 °C erwärmen und Hefe und Zucker darin auflösen.",
            "Den Rest zugeben, 3 Minuten mischen und 7 Minuten kneten.",
            "Den Teig 1 bis 1,5 Stunden gehen lassen.",
            "15 Brötchen formen, in eine Form setzen und 35 Minuten gehen lassen.",
            "Bei 190 °C 22 Minuten backen.",
        ),
        "15 Brötchen",
        "3 Tage",
    ),
}

_IN_FRENCH: Mapping[str, _Told] = {
    "Saturday country loaf": (
        "Pain du samedi",
        "La poolish du vendredi soir fait presque tout le travail.",
        ("la poolish", "la pâte"),
        (
            "farine de blé",
            "eau, fraîche",
            "levure sèche",
            "farine de blé",
            "farine de seigle",
            "eau, tiède",
            "sel fin",
            "levure sèche",
            "farine de riz",
        ),
        (
            "Pour la poolish, mélanger la farine, l'eau et la levure et laisser toute la nuit sous un linge.",
            "Mélanger le reste avec la poolish et laisser reposer 20 minutes.",
            "Pétrir à la main 12 minutes, puis laisser lever 2 heures.",
            "Façonner une boule et laisser lever 45 à 60 minutes dans le panier fariné.",
            "Cuire dans une cocotte chaude à 245 °C pendant 25 minutes, puis 20 minutes sans couvercle.",
        ),
        "1 grand pain",
        "5 jours",
    ),
    "Orange almond cake without flour": (
        "Gâteau aux oranges et aux amandes",
        "Moelleux et parfumé, pour une amie qui ne supporte pas le blé.",
        ("",),
        (
            "oranges, non pelées",
            "œufs",
            "poudre d'amandes",
            "sucre",
            "levure chimique",
            "sel",
            "une poignée d'amandes effilées = amandes effilées",
        ),
        (
            "Faire bouillir les oranges entières 90 minutes, les égoutter et retirer les pépins.",
            "Mixer les oranges.",
            "Battre les œufs et le sucre 6 minutes.",
            "Incorporer les amandes, la levure chimique, le sel et la purée et verser dans un moule de 23 cm.",
            "Parsemer d'amandes effilées et cuire à 170 °C pendant 50 minutes.",
        ),
        "10 parts",
        "5 jours au frais",
    ),
    "Potato dinner rolls": (
        "Petits pains aux pommes de terre",
        "Un reste de purée les garde tendres.",
        ("",),
        (
            "pommes de terre, cuites et écrasées",
            "lait",
            "œuf",
            "beurre, fondu",
            "sucre",
            "farine de blé",
            "sel",
            "levure fraîche, émiettée",
        ),
        (
            "Chauffer le lait à 35 °C et y délayer la levure et le sucre.",
            "Ajouter le reste, mélanger 3 minutes puis pétrir 7 minutes.",
            "Laisser lever 1 heure à 1 heure 30.",
            "Former 15 petits pains, les serrer dans un moule et laisser lever 35 minutes.",
            "Cuire à 190 °C pendant 22 minutes.",
        ),
        "15 petits pains",
        "3 jours",
    ),
}
