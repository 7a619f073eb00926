import type { Source } from "../figure/source.ts";

export const currencySource: Source = {
  cite: "ISO 4217, list one, minor units, as published on 25 June 2024",
  standing: "copy",
};

/** Currencies by the number of decimal places of their minor unit; precious metals, units of account and test codes are left out. */
const byPlaces = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
  2: "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG",
  3: "BHD IQD JOD KWD LYD OMR TND",
  4: "CLF UYW",
} as const;

/** The codes of all currencies. @example currencyCodes().includes("EUR") // => true */
export function currencyCodes(): readonly string[] {
  return Object.values(byPlaces).flatMap((codes) => codes.split(" "));
}

/**
 * Decimal places of the smallest coin or book unit of a currency; undefined for what is no currency.
 *
 * @param code - ISO 4217, in capitals
 * Source: ISO 4217, list one.
 * @example minorPlaces("JPY") // => 0
 */
export function minorPlaces(code: string): number | undefined {
  const found = Object.entries(byPlaces).find(([, codes]) => codes.split(" ").includes(code));
  return found === undefined ? undefined : Number(found[0]);
}
