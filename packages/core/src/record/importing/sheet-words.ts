// What people write above the columns of their sheets, in the words of several languages. Common words, no source.
// Small letters without accents, as `plainText` makes them.

import { remembered } from "./remembered.ts";
import type { LeakKind, PressureKind } from "../types.ts";

/** Text as it is compared: small, without accents, one blank between words, no dots and colons at its end. */
export const plainText = remembered((text: string): string => {
  const start = text.slice(0, 200);
  return (isAscii.test(start) ? start : withoutAccents(start))
    .toLowerCase()
    .replace(/\s+/g, " ")
    .trim()
    .replace(/[\s.:]+$/, "");
});

const isAscii = /^[\t\n\r -~]*$/;

const withoutAccents = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/[\u0300-\u036F]/g, "")
    .toLowerCase()
    .replace(/ł/g, "l")
    .replace(/ß/g, "ss")
    .replace(/ø/g, "o");

const words = (list: string): ReadonlySet<string> => new Set(list.split(",").map((word) => word.trim()));

/** What stands above a column that holds something beside readings. */
export const headWords = {
  date: words(
    "date, day, when, test date, date of test, tested, tested on, datum, tag, testdatum, prufdatum, messdatum, date du test, date de mesure, jour, fecha, fecha de prueba, dia, data, data prova, giorno, meetdatum, dag, data pomiaru, data testu, dzien, provdatum",
  ),
  engine: words(
    "engine, engine id, plane, aircraft, airplane, aeroplane, reg, registration, reg no, tail no, tail number, machine, machine id, machine no, tractor, vehicle, boat, unit no, fleet no, asset, equipment, name, motor, maschine, maschinennr, fahrzeug, schlepper, traktor, gerat, moteur, engin, vehicule, tracteur, maquina, vehiculo, tractor no, motore, macchina, veicolo, trattore, voertuig, trekker, silnik, maszyna, pojazd, ciagnik, maskin, fordon",
  ),
  cylinder: words(
    "cylinder, cylinder no, cylinder number, cyl, cyl no, cyl nr, zylinder, zyl, zyl nr, zylinder nr, cylindre, cyl n, cilindro, cil, cilinder, cilinder nr, cylinder nr, cylindr, nr cylindra, cylindrar",
  ),
  what: words(
    "what, test, kind, kind of test, test type, type, type of test, art, prufung, art der prufung, type de test, essai, tipo, prueba, prova, tipo di prova, soort, soort test, rodzaj, rodzaj testu, typ, prov",
  ),
  take: words(
    "take, repeat, run, reading no, trial, attempt, no of reading, wiederholung, durchgang, messung nr, repetition, passage, repeticion, ripetizione, herhaling, powtorzenie, upprepning",
  ),
  unit: words(
    "unit, units, einheit, einheiten, unite, unites, unidad, unidades, unita, eenheid, jednostka, enhet",
  ),
  gauge: words(
    "gauge, tester, instrument, gauge no, manometer, messgerat, prufgerat, manometre, appareil, manometro, aparato, strumento, meetklok, manometr, przyrzad, matare, matinstrument",
  ),
  meter: words(
    "meter, hours, hrs, h, hour meter, hourmeter, engine hours, running hours, hobbs, tach, odometer, odo, miles, mileage, km, stunden, betriebsstunden, std, zahler, zahlerstand, kilometerstand, heures, compteur, kilometrage, horas, cuentahoras, kilometraje, ore, contaore, chilometri, uren, draaiuren, urenteller, kilometers, godziny, motogodziny, mth, przebieg, timmar, drifttimmar, matarstallning",
  ),
  by: words(
    "by, who, tested by, done by, measured by, mechanic, technician, operator, person, initials, von, gepruft von, prufer, mechaniker, par, mecanicien, por, mecanico, da, eseguito da, meccanico, door, monteur, przez, mechanik, av, mekaniker, utfort av",
  ),
  note: words(
    "note, notes, remark, remarks, comment, comments, observations, bemerkung, bemerkungen, notiz, notizen, anmerkung, anmerkungen, kommentar, remarque, remarques, commentaire, nota, notas, observaciones, comentario, commento, osservazioni, note varie, opmerking, opmerkingen, uwaga, uwagi, komentarz, anmarkning, anmarkningar",
  ),
  // a column of tests.csv, by its own name
  set_aside: words("set_aside, set aside"),
  ignition: words("ignition"),
  reading: words(
    "reading, readings, value, values, result, results, pressure, wert, werte, messwert, druck, lecture, valeur, pression, lectura, valor, presion, lettura, valore, pressione, waarde, druk, odczyt, wartosc, cisnienie, varde, tryck",
  ),
} as const;

export type HeadWord = keyof typeof headWords;

/** The one word for what an average or a total is called, at the end of a row or a column. */
const summaries = words(
  "average, avg, ave, average value, mean, mean value, all cylinders, book, book figure, book value, book figures, spec, specs, specification, factory, factory figure, schnitt, durchschnittswert, sollwert, median, total, totals, sum, subtotal, sub total, min, minimum, max, maximum, lowest, highest, range, spread, diff, difference, ratio, std dev, stdev, deviation, limit, limits, durchschnitt, mittel, mittelwert, mw, summe, gesamt, differenz, abweichung, spanne, moyenne, moy, somme, ecart, media, promedio, prom, suma, diferencia, medio, somma, totale, differenza, gemiddelde, gem, som, totaal, verschil, srednia, sr, razem, roznica, medel, medelvarde, summa, skillnad",
);

/** Whether a text names an average, a total, a limit: `Average`, `Mittelwert:`, `avg (psi)`, `Ø`. */
export const isSummary = remembered((text: string): boolean => {
  const plain = plainText(text);
  if (plain === "ø" || plain === "o" || plain === "∅") return /[øØ∅]/.test(text);
  const bare = plain.replace(/\s*[([].*$/, "").replace(/[\s.:%=]+$/, "");
  return (
    summaries.has(bare) ||
    /^all (?:two|three|four|five|six|eight|\d{1,2})$/.test(bare) ||
    summaries.has(bare.replace(/ (?:of|per|pro|par|por|di|van|for) .*$/, ""))
  );
});

const cylinderNames =
  "cylinders?|cylindres?|cylindr[ay]?|cyl|zylinder|zyl|cilindros?|cilindri|cilinders?|cil|number|no|nr|num|n°|nº|c|z|#";
const cylinderShape = new RegExp(`^(?:(?:${cylinderNames})[\\s.:#°º_-]*)*([lr]?\\d{1,2})$`);

/** The label of the cylinder that a text names: `3` of `Cyl 3`, `Zyl. 3`, `#3`, `c3`, `3`; `L2` of `cyl L2`, `Left 2`. */
export const cylinderNamed = remembered((text: string): string | undefined => {
  const plain = plainText(text);
  const [, found] = cylinderShape.exec(plain) ?? [];
  const [, side = "", place = ""] = found === undefined ? (sideFirst.exec(plain) ?? []) : [];
  const letter = sides.find(([, names]) => names.has(side))?.[0] ?? side;
  const label = (found ?? `${letter}${place}`).toUpperCase().replace(/^([LR]?)0+(?=\d)/, "$1");
  return label === "" || /^[LR]?0$/.test(label) ? undefined : label;
});

/** Whether a text counts repeats: `1st`, `2nd`, `3.`. */
export const isOrdinal = (text: string): boolean =>
  /^[1-9]\d?\s?(?:st|nd|rd|th|\.|er|eme|e|re)$/.test(text.trim().toLowerCase());

const sides: readonly (readonly [string, ReadonlySet<string>])[] = [
  ["L", words("left, lh, links, linker, gauche, izquierdo, izquierda, sinistro, sinistra, lewy, vanster")],
  ["R", words("right, rh, rechts, rechter, droite, droit, derecho, derecha, destro, destra, prawy, hoger")],
];

const sideFirst = new RegExp(
  `^([lr]|${sides.flatMap(([, names]) => [...names]).join("|")})[\\s.-]*(?:(?:${cylinderNames})[\\s.:#-]*)?(\\d{1,2})$`,
);

/** The label of a cylinder that is named by its side: `L` of `Left`, `Left cylinder`. Only where the map says that a text is a cylinder's:
 *  two engines of a boat are called so too. A side with other words, as `Left front`, is not the side alone. */
export const sideNamed = (text: string): string | undefined => {
  const [first = "", ...rest] = plainText(text).split(" ");
  return rest.every((word) => isCylinderWord.test(word))
    ? sides.find(([, names]) => names.has(first))?.[0]
    : undefined;
};
const isCylinderWord = new RegExp(`^(?:${cylinderNames})\\.?$`);

/** Whether a text names a cylinder by a word or a sign, not by its bare number. */
export const saysCylinder = (text: string): boolean =>
  cylinderNamed(text) !== undefined && !/^[LlRr]?\d+$/.test(text.trim());

const kinds: readonly (readonly [PressureKind | LeakKind, RegExp])[] = [
  ["leak-down-oiled", /^(?:leak|differential).*(?:oil|wet)|^leak-down-oiled$/],
  ["leak-down-lower", /^leak-down-lower$/],
  [
    "leak-down",
    /\b(?:leak ?-?down|leak ?-?age|leak|leak test|leak-?off|differential|druckverlust|druckverlusttest|fuites?|etancheite|fugas?|perdite?|lekkage|lektest|lekverlies|nieszczelnosc|lackage|tryckforlust)\b/,
  ],
  ["first-stroke", /\bfirst[ -]?stroke\b|\bfirst puff\b/],
  ["snap-throttle", /\bsnap[ -]?throttle\b|\bsnap\b/],
  ["running", /\brunning\b(?! hours)/],
  [
    "wet",
    /\bwet\b|\bwith oil\b|\bnass\b|\bmit ol\b|\bhumide\b|\bavec huile\b|\bhumedo\b|\bcon aceite\b|\bcon olio\b|\bnat\b|\bmet olie\b|\bz olejem\b|\bvat\b|\bmed olja\b/,
  ],
  [
    "dry",
    /\bdry\b|\btrocken\b|\bsec\b|\bseco\b|\bsecco\b|\bdroog\b|\bsucho\b|\btorr\b|\bcompressions?\b|\bcomp\b|\bkompression(?:stest|sdruck|sprufung)?\b|\bcompresion\b|\bcompressione\b|\bcompressie(?:test)?\b|\bkompresja\b|\bcisnienie sprezania\b/,
  ],
];

/** The kind of reading that a text names; "compression" without a word of oil is the dry test. */
export const kindNamed = remembered((text: string): PressureKind | LeakKind | undefined => {
  const plain = plainText(text);
  return kinds.find(([, shape]) => shape.test(plain))?.[0];
});

/** How an engine fires, as a yard's file has it. */
export const ignitionNamed = (text: string): "spark" | "compression" | undefined =>
  (["spark", "compression"] as const).find((word) => word === plainText(text));

const monthNames: readonly string[] = [
  "jan,january,januar,janvier,enero,ene,gennaio,gen,januari,styczen,stycznia,sty,janv",
  "feb,february,februar,fevrier,fev,febrero,febbraio,februari,luty,lutego,lut,fevr",
  "mar,march,marz,mars,marzo,maart,mrt,marzec,marca,mrz,maerz",
  "apr,april,avril,avr,abril,abr,aprile,kwiecien,kwietnia,kwi",
  "may,mai,mayo,maggio,mag,mei,maj,maja",
  "jun,june,juni,juin,junio,giugno,giu,czerwiec,czerwca,cze",
  "jul,july,juli,juillet,juil,julio,luglio,lug,lipiec,lipca,lip",
  "aug,august,aout,agosto,ago,augustus,sierpien,sierpnia,sie,augusti",
  "sep,sept,september,septembre,septiembre,settembre,set,wrzesien,wrzesnia,wrz",
  "oct,october,okt,oktober,octobre,octubre,ottobre,ott,pazdziernik,pazdziernika,paz",
  "nov,november,novembre,noviembre,listopad,listopada,lis",
  "dec,december,dez,dezember,decembre,diciembre,dic,dicembre,grudzien,grudnia,gru",
];
const months: ReadonlyMap<string, number> = new Map(
  monthNames.flatMap((names, i) => names.split(",").map((name) => [name, i + 1] as const)),
);

/** The month, 1 to 12, that a word names. */
export const monthNamed = (word: string): number | undefined => months.get(plainText(word));
