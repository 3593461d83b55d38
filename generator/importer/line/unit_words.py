"""Unit words of German, French, Spanish, Italian, Dutch, Portuguese, Nordic and Polish kitchens, put into ours.

Names and abbreviations follow CLDR (units of volume and mass) and trade usage. A spoon of these countries is
metric, as is ours within 2 %; a cup (Tasse, tasse, taza, tazza) has no one size, so it is asked about.
"""

import re
from collections.abc import Mapping
from types import MappingProxyType

_SPELLINGS: Mapping[str, str] = MappingProxyType(
    {
        "tbsp": (
            "el|esslöffel|eßlöffel|essl|cuill[eè]res? [àa] soupe|c\\.? ?[àa] ?s(?:oupe)?|cs|cucchiai[oa]?"
            "|cucharadas?(?: soperas?)?|cdas?|eetlepels?|colher(?:es)? \\(?(?:de )?sopa\\)?"
            "|spsk|spiseskeer?|msk|matskedar|matsked|rkl|ruokalusikallista|łyżk[iaę]|łyżek"
        ),
        "tsp": (
            "tl|teelöffel|teel|cuill[eè]res? [àa] (?:caf[eé]|th[eé])|c\\.? ?[àa] ?c(?:af[eé])?|cucchiain[oi]"
            "|cucharaditas?|cdtas?|cditas?|theelepels?|koffielepels?|colher(?:es)? \\(?(?:de )?ch[aá]\\)?"
            "|tsk|teske(?:er)?|teskedar|tesked|teelusikallista|łyżeczk[iaę]|łyżeczek"
        ),
        "g": "gramm|gramos?|grammi|grammo|gr",
        "kg": "kilogramm|kilogramos?|chilogramm[io]|chil[io]",
        "ml": "milliliter|millilitres?|mililitros?|millilitri|krm|kryddmått",
        "dl": "deziliter|décilitres?|decilitros?|decilitri",
        "l": "liter|litros?|litri|litro",
        "packet": "päckchen|pck|pkg|packung|sachets?|sobres?|bustin[ae]|zakjes?|pakjes?|pâckchen"
        "|påsar?|opakowani[ae]|pacotes?|pussi",
        "clove": "zehen?|gousses?|dientes?|spicch[io]|teentjes?|tenen|klyftor|klyfta|fed|ząbk[i]|ząbek",
        "slice": "scheiben?|tranches?|rebanadas?|fett[ae]|plakjes?",
        "sheet": "blatt|blätter|feuilles?|hojas?|fogli|foglio|blaadjes?",
        "can": "dosen?|bo[iî]tes?|latas?|lattin[ae]|blik(?:ken)?",
        "jar": "gläser|glas|bocaux|bocal|tarros?|vasett[oi]|potjes?",
        "piece": "stück|stk|pièces?|piezas?|unidades|pezz[oi]|stuks?|kpl|szt|würfel",
        "drop": "tropfen|gouttes?|gotas?|gocc[eia]+|druppels?",
        "sprig": "zweige?|brins?|ramitas?|rametti|rametto|takjes?",
        "pod": "schoten?|schote|gousse de vanille|vainas?|baccell[oi]|stokjes?",
        "cup": "tassen?|tasses?|tazas?|tazz[ae]|kopjes?|xícaras?|chávenas?|szklank[iaę]|szklanek|kopper|koppar",
        "pinch": "prisen?|msp|messerspitzen?|pinc[ée]es?|pizcas?|pizzic[oh]i?|snufjes?"
        "|mespuntjes?|pitadas?|szczypt[aęy]|nypa|nypor|knivspids",
        "stick": "barres?",
    }
)
_FOREIGN = MappingProxyType(
    {unit: re.compile(rf"(?:{spelt})(?![\w])\.?", re.I) for unit, spelt in _SPELLINGS.items()}
)
_FILL = MappingProxyType(
    {
        "level": re.compile(r"(?:gestr(?:\.|ichene[rns]?)|rase?s?|rasas?|ras[oi]|afgestreken)\s+", re.I),
        "heaped": re.compile(
            r"(?:geh(?:\.|äufte[rns]?)|bombées?|colmadas?|colm[oi]|volle|afgeladen)\s+", re.I
        ),
    }
)
_ARTICLE = re.compile(r"(?:eine?[nr]?|une?|una|uno|een|un)\s+", re.I)
_OF = re.compile(r"\s*(?:d['’]\s*|(?:de la|de l['’]|del|della|dei|delle|de|di|du|des|von)\s+)", re.I)
VAGUE_CUP = "a cup of another country has no one size"


def in_our_units(text: str, start: int) -> tuple[str, str, int] | None:
    """The unit of another language at `start`: our fill word ("level" or ""), our unit, and the index after it."""
    fill = ""
    for name, pattern in _FILL.items():
        if found := pattern.match(text, start):
            fill, start = name, found.end()
    for unit, pattern in _FOREIGN.items():
        if found := pattern.match(text, start):
            return fill, unit, found.end()
    return None


def article_end(text: str) -> int | None:
    """The index after `eine`, `une`, `una`, `een` at the start, which count one before a unit."""
    found = _ARTICLE.match(text)
    return found.end() if found else None


def without_of(text: str) -> str:
    """What stands after a unit, without `de`, `d'`, `di` and their kin."""
    found = _OF.match(text)
    return text[found.end() :] if found else text.lstrip()
