/**
 * Recordings in the European Data Format.
 * <p>Lives here: writing EDF+C (Kemp and Olivan, Clin. Neurophysiol. 114 (2003) 1755). Does not: finding breaths, what the samples mean.
 * <p>Leans on nothing but the language.
 */
package leeway.files.edf;
