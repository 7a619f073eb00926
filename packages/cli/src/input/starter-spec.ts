/** The spec that `noodlewright new` writes. A test runs it. */
export const starterSpec = `# yaml-language-server: $schema=./noodle.schema.json
# Make the schema for your editor: noodlewright schema > noodle.schema.json
# Every quantity carries its unit: 350 g, 1 lb 4 oz, 36 %, 1.4 mm, 20 °C.

name: Weekday noodle

# The flours make up 100 parts. Names come from \`noodlewright materials\`;
# figures of your own, copied from the certificate of the flour, go before the table's.
flours:
  - name: bread flour
    amount: 85 %
    figures:
      moisture: 13.8 %
      protein: 12.2 %
      proteinBasis: 14 % mb      # as is, dry, or at a moisture
      nitrogenFactor: 5.7        # 6.25 on many nutrition labels
      # with no certificate, the label of the bag in place of the protein lines:
      # label: { protein: 4 g, serving: 30 g, rules: US }
  - name: whole wheat flour
    amount: rest

# One of:
#   added: 36 %    all water that is not the flour's own, in % of flour
#   tap: 34 %      what is poured
#   dough: 36 %    all water, in % of the dough
# onFlourMoisture: 14 %   when the formula was written on flour of that moisture
water:
  added: 36 %

# A dose says what it states: product, anhydrous salts, or alkalinity (% as Na2CO3, or meq per 100 g flour).
alkali:
  - name: sodium carbonate
    amount: 0.6 %
  - name: potassium carbonate
    amount: 0.4 %
    as: anhydrous salts

salt: 1 %

# Anything else, in % of flour. Its water counts.
# ingredients:
#   - name: whole egg
#     amount: 5 %

dusting:
  name: cornstarch
  amount: 1.5 %

# One of: bowls (with rawWeight, or with cookedWeight and cookGain), dough, flour, load, have
batch:
  bowls: 40
  rawWeight: 130 g

# In % of what enters each stage.
losses:
  mixing: 0.5 %
  sheeting: 3 %
  cutting: 1 %

mixer:
  smallest: 1 kg
  largest: 4 kg
  of: dough

scales:
  - name: bench scale
    division: 1 g
    capacity: 15 kg
  - name: fine scale
    division: 0.1 g
    capacity: 500 g

# From dough to strands: noodlewright sheet. Machines may stand in a kitchen file, too.
machines:
  hand crank:
    width: 145 mm
    dial:                        # the gap of every number, measured
      "1": 4.8 mm
      "2": 3.6 mm
      "3": 2.7 mm
      "4": 2.0 mm
      "5": 1.5 mm
    cutters:
      - size: 2 mm               # the width of a strand; a plain 20 is a cutter number
    longestSheet: 1 m
sheet:
  machine: hand crank
  thickness: 1.5 mm
  cutter: 2 mm
  start: 6 mm                    # the dough as it goes to the rolls
  strandLength: 320 mm

# Water temperature and ice: noodlewright water-temperature
temperature:
  dough: 25 °C
  flour: 20 °C
  room: 20 °C
  tap: 12 °C

# The day, backwards from service: noodlewright plan
plan:
  serve: "12:15"
  weigh: 10 min
  mix: 15 min
  rest: { least: 20 min, most: 60 min }
  roll: 30 min
  cut: 15 min
  boil: 20 min
`;
