"""Twelve invented bakes."""

from tests.importer.corpus.truth import Bake, line

BAKES = (
    Bake(
        title="Harvest loaf with oats",
        lead="A mild tin loaf for the first cold week of the year.",
        parts=(
            (
                "dough",
                (
                    line("450 g", "bread flour", has="wheat"),
                    line("60 g", "rolled oats", has="oats"),
                    line("310 ml", "water", "lukewarm"),
                    line("2 tbsp", "honey"),
                    line("1.5 tsp", "salt"),
                    line("7 g", "instant yeast"),
                    line("30 g", "unsalted butter", "soft", has="milk"),
                ),
            ),
        ),
        steps=(
            "Stir the water, honey and instant yeast together in a wide bowl.",
            "Add the bread flour, rolled oats and salt and knead for 10 minutes, then work in the butter.",
            "Cover the bowl and let the dough rise for 1 hour.",
            "Shape it, set it in a greased loaf tin and let it rise again for 40 minutes.",
            "Bake at 375°F for 35 minutes, until the centre reads 195°F.",
        ),
        times=(("knead", 10, 10), ("rise", 60, 60), ("rise", 40, 40), ("bake", 35, 35)),
        heats=(("oven", 375, "F"), ("core", 195, "F")),
        makes="1 loaf",
        keeps="3 days in a cloth bag",
    ),
    Bake(
        title="Plum kuchen squares",
        lead="Soft cake under sour plums, cut small for a crowd.",
        parts=(
            (
                "batter",
                (
                    line("250 g", "all-purpose flour", has="wheat"),
                    line("150 g", "sugar"),
                    line("125 g", "butter", "melted", has="milk"),
                    line("3", "eggs", size="large", has="egg"),
                    line("120 ml", "whole milk", has="milk"),
                    line("2 tsp", "baking powder"),
                    line("1 pinch", "salt"),
                ),
            ),
            (
                "topping",
                (
                    line("600 g", "plums", "halved and pitted"),
                    line("40 g", "brown sugar"),
                    line("1 tsp", "cinnamon"),
                ),
            ),
        ),
        steps=(
            "Heat the oven to 180 °C and line a 20 cm square tin with paper.",
            "Beat the eggs with the sugar for 5 minutes until pale, then stir in the butter and milk.",
            "Fold in the flour, baking powder and salt and spread it in the tin.",
            "Lay the plums on top and scatter them with the brown sugar and cinnamon.",
            "Bake for 40 to 45 minutes and cool for 30 minutes in the tin.",
        ),
        times=(("mix", 5, 5), ("bake", 40, 45), ("cool", 30, 30)),
        heats=(("oven", 180, "C"),),
        makes="16 squares",
        keeps="2 days in the refrigerator",
    ),
    Bake(
        title="Rye crackers with seeds",
        lead="Thin and loud, for cheese.",
        parts=(
            (
                "dough",
                (
                    line("200 g", "rye flour", has="rye"),
                    line("100 g", "all-purpose flour", has="wheat"),
                    line("0.25 cup", "sesame seeds", has="sesame"),
                    line("3 tbsp", "sunflower seeds"),
                    line("80 ml", "olive oil"),
                    line("130 ml", "water"),
                    line("1 tsp", "fine sea salt"),
                ),
            ),
        ),
        steps=(
            "Mix the rye flour, all-purpose flour and salt with the olive oil and water and knead for 3 minutes.",
            "Wrap the dough and let it rest for 20 minutes.",
            "Roll it out very thin, scatter it with the sesame seeds and sunflower seeds and press them in.",
            "Bake at 200 °C for 12-15 minutes.",
        ),
        times=(("knead", 3, 3), ("rest", 20, 20), ("bake", 12, 15)),
        heats=(("oven", 200, "C"),),
        makes="60 crackers",
        keeps="2 weeks in a tin",
    ),
    Bake(
        title="Walnut crescents",
        lead="Short, sandy and gone by evening.",
        parts=(
            (
                "dough",
                (
                    line("280 g", "all-purpose flour", has="wheat"),
                    line("100 g", "walnuts", "finely ground", has="walnut"),
                    line("200 g", "unsalted butter", "cold", has="milk"),
                    line("80 g", "icing sugar"),
                    line("2", "egg yolks", has="egg"),
                    line("1 tsp", "vanilla extract"),
                ),
            ),
            ("finish", (line("50 g", "icing sugar", "sifted"),)),
        ),
        steps=(
            "Rub the flour, walnuts and butter to crumbs.",
            "Stir in the egg yolks and vanilla extract and press the dough together, then chill for 1 hour.",
            "Roll small ropes, bend them and bake at 350 F for 14 minutes.",
            "Roll the crescents in sugar while they are warm.",
        ),
        times=(("chill", 60, 60), ("bake", 14, 14)),
        heats=(("oven", 350, "F"),),
        makes="40 crescents",
        keeps="3 weeks in a tin",
    ),
    Bake(
        title="Buttermilk breakfast rolls",
        lead="Pull-apart rolls that wait in the cold overnight.",
        parts=(
            (
                "dough",
                (
                    line("4 cup = 500 g", "all-purpose flour", has="wheat"),
                    line("1.25 cup", "buttermilk", has="milk"),
                    line("0.25 cup", "sugar"),
                    line("2.25 tsp", "instant yeast"),
                    line("1", "egg", size="large", has="egg"),
                    line("6 tbsp", "unsalted butter", "melted", has="milk"),
                    line("1.25 tsp", "salt"),
                ),
            ),
        ),
        steps=(
            "Warm the buttermilk to 100°F and whisk in the yeast, sugar, egg and butter.",
            "Add the flour and salt and knead for 8 minutes.",
            "Let rise for 1 hour 30 minutes, shape 12 rolls and chill overnight.",
            "Bake at 375°F (190°C) for 22 to 25 minutes.",
        ),
        times=(("knead", 8, 8), ("rise", 90, 90), ("bake", 22, 25)),
        heats=(("oven", 375, "F"),),
        makes="12 rolls",
        keeps="2 days in a bag",
    ),
    Bake(
        title="Spelt and carrot muffins",
        lead="A lunch-box muffin that is not too sweet.",
        parts=(
            (
                "",
                (
                    line("220 g", "spelt flour", has="wheat"),
                    line("120 g", "light brown sugar"),
                    line("2", "eggs", has="egg"),
                    line("150 g", "carrots", "finely grated"),
                    line("100 ml", "vegetable oil"),
                    line("80 g", "yogurt", has="milk"),
                    line("1 tsp", "baking soda"),
                    line("0.5 tsp", "ground ginger"),
                ),
            ),
        ),
        steps=(
            "Preheat the oven to 190C/170C fan/gas 5.",
            "Whisk the eggs, light brown sugar, oil and yogurt.",
            "Fold in the carrots, spelt flour, baking soda and ginger.",
            "Fill 12 paper cases and bake for 20 minutes.",
        ),
        times=(("bake", 20, 20),),
        heats=(("oven", 190, "C"),),
        makes="12 muffins",
        keeps="2 days; freezes for 2 months",
    ),
    Bake(
        title="Hazelnut layer torte",
        lead="Three thin layers and a sharp jam.",
        parts=(
            (
                "cake",
                (
                    line("6", "eggs", "separated", size="large", has="egg"),
                    line("180 g", "granulated sugar"),
                    line("220 g", "ground hazelnuts", has="hazelnut"),
                    line("30 g", "breadcrumbs", has="wheat"),
                    line("1 tsp", "lemon zest"),
                ),
            ),
            (
                "filling",
                (
                    line("200 g", "raspberry jam"),
                    line("300 ml", "heavy cream", "cold", has="milk"),
                    line("1 tbsp", "rum"),
                ),
            ),
        ),
        steps=(
            "Beat the egg yolks with half the sugar for 6 minutes.",
            "Whip the whites with the remaining sugar and fold in the hazelnuts, breadcrumbs and lemon zest.",
            "Bake in three 23 cm round tins at 170 °C for 18 minutes, then cool for 1 hour.",
            "Spread the layers with the raspberry jam, whip the heavy cream with the rum and fill the torte.",
            "Chill for 2 hours before you cut it.",
        ),
        times=(("mix", 6, 6), ("bake", 18, 18), ("cool", 60, 60), ("chill", 120, 120)),
        heats=(("oven", 170, "C"),),
        makes="1 torte",
        keeps="2 days in the refrigerator",
    ),
    Bake(
        title="Corner shop scones",
        lead="Ten minutes of work and the jam is on the table.",
        parts=(
            (
                "dough",
                (
                    line("350 g", "self-raising flour", has="wheat"),
                    line("85 g", "butter", "in cubes", has="milk"),
                    line("3 tbsp", "caster sugar"),
                    line("175 ml", "milk", has="milk"),
                    line("1 tsp", "baking powder"),
                    line("0.25 tsp", "salt"),
                ),
            ),
            ("glaze", (line("1", "egg", "beaten", has="egg"),)),
        ),
        steps=(
            "Heat the oven to 220 °C.",
            "Rub the butter into the self-raising flour, baking powder and salt, then stir in the caster sugar.",
            "Pour in the milk and bring it together with a knife.",
            "Pat it out, cut rounds of 5 cm, brush with the egg and bake for 10 to 12 minutes.",
        ),
        times=(("bake", 10, 12),),
        heats=(("oven", 220, "C"),),
        makes="8 scones",
        keeps="1 day",
    ),
    Bake(
        title="Soy and cocoa sheet cake",
        lead="No milk in the house that day, and nobody missed it.",
        parts=(
            (
                "cake",
                (
                    line("320 g", "all-purpose flour", has="wheat"),
                    line("250 g", "sugar"),
                    line("45 g", "cocoa powder"),
                    line("360 ml", "soy milk", has="soy"),
                    line("110 ml", "vegetable oil"),
                    line("2 tsp", "baking soda"),
                    line("1 tbsp", "cider vinegar"),
                ),
            ),
            (
                "icing",
                (
                    line("120 g", "icing sugar"),
                    line("2 tbsp", "soy milk", has="soy"),
                    line("20 g", "almond butter", has="almond"),
                ),
            ),
        ),
        steps=(
            "Whisk the all-purpose flour, sugar, cocoa powder and baking soda.",
            "Add the vegetable oil and cider vinegar and stir for 1 minute.",
            "Pour it in a lined tin and bake at 350°F/175°C for 30 minutes.",
            "Cool for 45 minutes and ice it.",
        ),
        times=(("mix", 1, 1), ("bake", 30, 30), ("cool", 45, 45)),
        heats=(("oven", 350, "F"),),
        makes="1 sheet cake",
        keeps="4 days, covered",
    ),
    Bake(
        title="Slow pizza round",
        lead="Two days in the cold do the kneading.",
        parts=(
            (
                "dough",
                (
                    line("600 g", "00 flour", has="wheat"),
                    line("390 g", "water", "cold"),
                    line("15 g", "fine sea salt"),
                    line("1.5 g", "instant yeast"),
                    line("20 g", "olive oil"),
                ),
            ),
            (
                "topping",
                (
                    line("250 g", "mozzarella", "torn", has="milk"),
                    line("2 clove", "garlic", "sliced"),
                    line("4", "anchovies", has="anchovy"),
                ),
            ),
        ),
        steps=(
            "Mix the 00 flour, water, fine sea salt, yeast and half of the olive oil for 4 minutes.",
            "Leave it for 30 minutes, fold it once, and refrigerate it for 48 hours.",
            "Stretch it thin, lay on the mozzarella, garlic and anchovies and drip on the rest of the olive oil.",
            "Bake at 480°F for 9 minutes.",
        ),
        times=(("mix", 4, 4), ("rest", 30, 30), ("chill", 2880, 2880), ("bake", 9, 9)),
        heats=(("oven", 480, "F"),),
        makes="3 rounds",
        keeps="eat it hot",
    ),
    Bake(
        title="Peanut blondie slab",
        lead="Chewy at the edge, soft in the middle.",
        parts=(
            (
                "",
                (
                    line("115 g = 0.5 cup", "unsalted butter", "melted and cooled", has="milk"),
                    line("1 cup", "light brown sugar", size="packed"),
                    line("1", "egg", has="egg"),
                    line("1 tsp", "vanilla extract"),
                    line("140 g", "all-purpose flour", has="wheat"),
                    line("90 g", "peanut butter", has="peanut"),
                    line("0.5 tsp", "salt"),
                ),
            ),
        ),
        steps=(
            "Preheat the oven to 350°F and line an 8-inch square pan.",
            "Stir the butter with the light brown sugar, then beat in the egg and vanilla extract.",
            "Fold in the flour and salt and swirl in the peanut butter.",
            "Bake for 24-26 minutes.",
        ),
        times=(("bake", 24, 26),),
        heats=(("oven", 350, "F"),),
        makes="16 pieces",
        keeps="5 days in a tin",
    ),
    Bake(
        title="Cardamom knots",
        lead="Twisted tight, with plenty of spice.",
        parts=(
            (
                "dough",
                (
                    line("500 g", "bread flour", has="wheat"),
                    line("250 g", "whole milk", "warm", has="milk"),
                    line("75 g", "granulated sugar"),
                    line("80 g", "butter", has="milk"),
                    line("9 g", "fresh yeast"),
                    line("8 g", "table salt"),
                ),
            ),
            (
                "filling",
                (
                    line("90 g", "unsalted butter", "very soft", has="milk"),
                    line("70 g", "brown sugar"),
                    line("1 tbsp", "ground cardamom"),
                ),
            ),
        ),
        steps=(
            "Crumble the fresh yeast into the whole milk, add the bread flour, granulated sugar and "
            "table salt and knead 12 min.",
            "Cover and prove for 1½ hours.",
            "Spread the dough with the unsalted butter, brown sugar and ground cardamom, cut strips and knot them.",
            "Let them proof for 45 minutes to 1 hour.",
            "Bake at 220 °C for 11 minutes.",
        ),
        times=(("knead", 12, 12), ("rise", 90, 90), ("rise", 45, 60), ("bake", 11, 11)),
        heats=(("oven", 220, "C"),),
        makes="18 knots",
        keeps="best on the day",
    ),
)
