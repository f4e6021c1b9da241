/**
 * The default window of weather for a timed count: where its limits lie and where each comes from.
 *
 * The sun and temperature limits are those of the long-running butterfly transect counts: at least 13 °C with at least
 * 60 % sun, or at least 17 °C whatever the sun (published). The rest is common practice, no source, unless said.
 *
 * @source Pollard E., Yates T.J. (1993) Monitoring Butterflies for Ecology and Conservation. Chapman & Hall, London.
 */

/** In the window from here up, whatever the sun [°C]. Common practice, no source: butterfly limit adapted to bees. */
export const warmEnough = 15

/** In the window from here up if there is sun enough; below it a watch is out, but for bumble bees [°C]. Published: Pollard & Yates 1993. */
export const warmEnoughWithSun = 13

/** Share of the watch with sun that lets a cooler watch in [%]. Published: Pollard & Yates 1993. */
export const sunEnough = 60

/**
 * Below this a watch is out for bumble bees too [°C]. Published: queens in southern England were linked to periods
 * above 11 °C.
 *
 * @source Goodwin S.G. (1995) J. Apic. Res. 34, 79-87.
 */
export const tooColdForBumbleBees = 11

/** Above this a watch is marginal: insects rest from heat [°C]. Common practice, no source. */
export const hot = 35

/** From here up cloud does not matter [°C]. Published: Pollard & Yates 1993. */
export const warmWhateverTheCloud = 17

/** Cloud that is in the window when it is cooler than `warmWhateverTheCloud` [oktas]. Common practice, no source. */
export const cloudAllowed = 4

/** Strongest wind in the window [Beaufort]. Common practice, no source (the butterfly counts allow one step more). */
export const windAllowed = 4

/** Strongest marginal wind [Beaufort]. Published: Pollard & Yates 1993 count up to it. */
export const windMarginal = 5
