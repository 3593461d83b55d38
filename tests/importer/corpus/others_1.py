"""What people leave under a video, in the post, in a forum and in a word processor."""

from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_words import Other, Style, slug, wrapped, written
from tests.importer.corpus.truth import Bake

_GLYPH = Style(fraction="glyph", to="–")
_SLASH = Style()
_TIGHT = Style(gap="")
_KEYCAPS = ("1️⃣", "2️⃣", "3️⃣", "4️⃣", "5️⃣", "6️⃣", "7️⃣", "8️⃣", "9️⃣")


def video_full(bake: Bake, random: Random) -> Text:
    """A description with everything that a channel puts around a recipe."""
    tag = "#" + "".join(word.capitalize() for word in bake.title.split()[:2])
    minutes = sorted(random.sample(range(1, 14), 3))
    out = [
        f"{bake.title}! {bake.lead}",
        "",
        "🔔 SUBSCRIBE for a new bake every Friday: https://video.example/c/crumbandcloth",
        "📷 Follow along: https://pictures.example/crumbandcloth",
        "",
        "This video is sponsored by Millstone Mail. Use code CRUMB10 for 10% off your first box:",
        "https://millstone.example/crumb10",
        "",
        "👇 FULL RECIPE BELOW 👇",
        "",
        "INGREDIENTS",
    ]
    for name, lines in bake.parts:
        if name:
            out += ["", f"{name.upper()}:"]
        out += [f"▢ {written(line, _GLYPH)}" for line in lines]
    out += ["", "METHOD"]
    out += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    out += [
        "",
        f"Makes {bake.makes}. Keeps {bake.keeps}.",
        "",
        "CHAPTERS",
        "0:00 Intro",
        f"{minutes[0]}:12 Mixing",
        f"{minutes[1]}:40 Shaping and baking",
        f"{minutes[2]}:05 Tasting",
        "",
        "Music: “Small Kitchen” by The Tin Lids",
        "Filmed and edited by Noor",
        "",
        f"{tag} #baking #homebaking",
    ]
    return Text(name=f"{slug(bake)}.txt", data="\n".join(out) + "\n")


def video_emoji(bake: Bake, random: Random) -> Text:
    """The short kind: small pictures for bullets, and numbers in boxes."""
    mark = random.choice(("🔸", "🔹", "▪️", "✔️", "🧈"))
    out = [f"✨ {bake.title.upper()} ✨", bake.lead, "", f"🍞 Yield: {bake.makes}", ""]
    for name, lines in bake.parts:
        out.append(f"🥣 FOR THE {name.upper().removeprefix('TO ')}" if name else "🥣 YOU NEED")
        out += [f"{mark} {written(line, _TIGHT)}" for line in lines]
        out.append("")
    out.append("👩‍🍳 HOW TO")
    out += [f"{key} {step}" for key, step in zip(_KEYCAPS, bake.steps, strict=False)]
    out += [
        "",
        f"🧺 Storage: {bake.keeps}",
        "",
        "💬 Tell me in the comments if you try it!",
        "#bake #cozykitchen",
    ]
    return Text(name="description.txt", data="\n".join(out) + "\n")


def mail_quoted(bake: Bake, random: Random) -> Text:
    """An answer above the mail that it answers, every line of which has an angle before it."""
    inner = [
        "Hi Lene,",
        "",
        f"here is the recipe you asked for, {bake.title}. {bake.lead}",
        "",
        "Ingredients:",
        "",
    ]
    for name, lines in bake.parts:
        if name:
            inner.append(f"For the {name}:" if not name.startswith("to ") else f"{name.capitalize()}:")
        inner += [f"- {written(line, _SLASH)}" for line in lines]
        inner.append("")
    inner += ["Directions:", ""]
    inner += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    inner += ["", f"Makes {bake.makes}, keeps {bake.keeps}.", "", "Love,", "Tilda"]
    out = [
        "From: Lene <lene@post.example>",
        "To: Tilda <tilda@post.example>",
        f"Subject: Re: {bake.title}",
        "Date: Sun, 9 Mar 2014 10:02:11 +0100",
        "",
        "Thank you so much! I will try it on Sunday.",
        "",
        "On Sat, 8 Mar 2014 at 19:45, Tilda <tilda@post.example> wrote:",
        *(f"> {line}".rstrip() for line in inner),
        "",
        "-- ",
        "Lene",
        "Sent from the kitchen table",
    ]
    return Text(name=f"Re {bake.title}.txt", data="\n".join(out) + "\n")


def mail_letter(bake: Bake, random: Random) -> Text:
    """A mail passed on: no bullets, no numbers, a blank line between the things."""
    out = [
        "---------- Forwarded message ----------",
        "From: Odile <odile@post.example>",
        "Date: Tue, 4 Dec 2012",
        f"Subject: {bake.title}",
        "",
        "Hello dears,",
        "",
        f"as promised. {bake.lead}",
        "",
        bake.title,
        "",
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f"{name.capitalize()}:")
        out += [written(line, _SLASH) for line in lines]
        out.append("")
    for step in bake.steps:
        out += [step, ""]
    out += [f"Makes {bake.makes}. Keeps {bake.keeps}.", "", "Kisses to the children,", "Odile"]
    return Text(name="fwd.txt", data="\n".join(out) + "\n")


def forum_post(bake: Bake, random: Random) -> Text:
    """A post copied out of a board, with its marks in square brackets."""
    out = [
        f"Re: Share your favourite bake! (page {random.randint(2, 40)})",
        "by flourhand77 » Thu Oct 21, 2010 8:14 pm",
        "",
        f"[b]{bake.title}[/b]",
        f"[i]{bake.lead}[/i]",
        "",
        "[b]Ingredients[/b]",
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f"[u]{name.capitalize()}[/u]")
        out += ["[list]", *(f"[*]{written(line, _SLASH)}" for line in lines), "[/list]"]
    out += ["[b]Directions[/b]", "[list=1]"]
    out += [f"[*]{step}" for step in bake.steps]
    out += [
        "[/list]",
        f"Makes {bake.makes}. Keeps {bake.keeps}.",
        "",
        "Hope you like it :-)",
        "_________________",
        "Life is short, eat the crust.",
    ]
    return Text(name="post.txt", data="\n".join(out) + "\n")


def chat_message(bake: Bake, random: Random) -> Text:
    """An evening's messages saved as text: the recipe is one long message among short ones."""
    out = [
        "[14/02/2016, 18:02:40] Ines: do you still have the recipe?",
        "[14/02/2016, 18:05:13] Jorun: sure, one moment",
        f"[14/02/2016, 18:21:55] Jorun: *{bake.title}*",
        f"_{bake.lead}_",
        "",
    ]
    for name, lines in bake.parts:
        out.append(f"*{name.capitalize()}*" if name else "*Ingredients*")
        out += [f"• {written(line, _GLYPH)}" for line in lines]
        out.append("")
    out.append("*Method*")
    out += [f"{number}) {step}" for number, step in enumerate(bake.steps, 1)]
    out += [
        "",
        f"Makes {bake.makes}, keeps {bake.keeps}",
        "[14/02/2016, 18:22:30] Ines: you are an angel ❤️",
        "[14/02/2016, 18:22:58] Ines: making it tomorrow",
    ]
    return Text(name="chat.txt", data="\n".join(out) + "\n")


def document_text(bake: Bake, random: Random) -> Text:
    """A word processor's document saved as text: tabs behind bullets, round quotes, spaces that do not break."""
    out = [bake.title, "", f"“{bake.lead}”", "", f"Yield:\t{bake.makes}", f"Storage:\t{bake.keeps}", ""]
    out.append("Ingredients")
    for name, lines in bake.parts:
        if name:
            out.append(f"{name.capitalize()}")
        out += [f"\u2022\t{written(line, _GLYPH)}".replace(" g ", "\u00a0g ") for line in lines]
        out.append("")
    out.append("Preparation")
    out += [f"{number}.\t{step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", "Page 1 of 1"]
    return Text(name=f"{bake.title}.txt", data="\ufeff" + "\r\n".join(out) + "\r\n")


def document_html(bake: Bake, random: Random) -> Text:
    """The same document saved as a page: a paragraph for everything, bullets typed, spans everywhere."""

    def paragraph(text: str, style: str = "margin-bottom:0cm") -> str:
        inner = escape(text, quote=False)
        return f'<p class="P1" style="{style}"><span lang="en-GB" style="font-size:11pt">{inner}</span></p>'

    out = [
        "<html><head><meta http-equiv='content-type' content='text/html; charset=utf-8'>",
        f"<title>{escape(bake.title)}</title>",
        "<style>p.P1 { margin: 0cm; font-family: serif }</style></head>",
        "<body lang='en-GB'>",
        f'<p class="P1"><b><span style="font-size:16pt">{escape(bake.title)}</span></b></p>',
        paragraph(bake.lead),
        paragraph("\u00a0"),
        '<p class="P1"><b><u><span>Ingredients</span></u></b></p>',
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f'<p class="P1"><b><span>{escape(name.capitalize())}</span></b></p>')
        out += [
            paragraph(f"·\u00a0\u00a0\u00a0{written(line, _GLYPH)}", "margin-left:18pt") for line in lines
        ]
    out.append('<p class="P1"><b><u><span>Method</span></u></b></p>')
    out += [
        paragraph(f"{number})\u00a0\u00a0{step}", "margin-left:18pt")
        for number, step in enumerate(bake.steps, 1)
    ]
    out += [
        paragraph("\u00a0"),
        paragraph(f"Makes {bake.makes}. Keeps {bake.keeps}."),
        "</body></html>",
    ]
    return Text(name=f"{slug(bake)}.html", data="\n".join(out) + "\n")


def newsletter(bake: Bake, random: Random) -> Text:
    """A letter to readers as plain text, wrapped at sixty characters."""
    out = [
        "THE FRIDAY CRUMB",
        f"Letter no. {random.randint(12, 90)}",
        "============================================================",
        "View this letter in your browser:",
        "https://letters.example/friday-crumb",
        "",
        wrapped(f"Dear bakers, it rained all week, so there was time to bake. {bake.lead}", 60),
        "",
        "------------------------------------------------------------",
        bake.title.upper(),
        "------------------------------------------------------------",
        "",
        f"Makes {bake.makes}",
        "",
    ]
    for name, lines in bake.parts:
        out += [name.capitalize() if name else "Ingredients", ""]
        out += [wrapped(written(line, _SLASH), 60, first="  * ", then="    ") for line in lines]
        out.append("")
    out += ["What to do", ""]
    for number, step in enumerate(bake.steps, 1):
        out += [wrapped(step, 60, first=f"{number}. ", then="   "), ""]
    out += [
        f"Keeps {bake.keeps}.",
        "",
        "============================================================",
        "You get this letter because you asked for it.",
        "Unsubscribe: https://letters.example/leave",
    ]
    return Text(name="letter.txt", data="\n".join(out) + "\n")


FIRST: Mapping[str, Other] = {
    "video full": Other(write=video_full),
    "video emoji": Other(write=video_emoji),
    "mail quoted": Other(write=mail_quoted),
    "mail letter": Other(write=mail_letter),
    "forum post": Other(write=forum_post),
    "chat message": Other(write=chat_message),
    "document as text": Other(write=document_text),
    "document as page": Other(write=document_html),
    "newsletter": Other(write=newsletter),
}
