package leeway.app.web;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * A text as part of an address, and back: deflated with a dictionary of words that transport files are made of, in
 * letters that an address may hold. An address that was cut or tampered with opens to nothing.
 */
final class Packed {
    /** The longest text that an address opens to, in bytes; far above any transport file typed by hand. */
    static final int MAX_TEXT_BYTES = 64 * 1024;
    /** Longest packed form that goes into an address; servers and browsers take at least this. From memory: 8 kB lines. */
    static final int MAX_ADDRESS = 6_000;
    private static final char FIRST_DICTIONARY = '1';
    /** Changing this text breaks every link in the world: add a second dictionary with its own first letter instead. */
    private static final byte[] DICTIONARY = ("""
            temperature: 37 Cel  haemoglobin: 120 g/L  cardiac output  paralysed: yes  chest drain: yes  position
            lungs: {compliance: 40 mL/cmH2O, resistance: 10 cmH2O.s/L, effort: none, shunt: 18 %, dead space: 160 mL}
            blood gas: {ph: 7.31, paco2: 52 mmHg, pao2: 74 mmHg, fio2: 60 %, tidal volume: 360 mL, rate: 20 /min, peep: 8 cmH2O, after: 30 min}
            strategy: by illness  obstructive  head injury  policy: default  monitor: example transport monitor
            sex: male  age: 58 years  illness: severe ARDS  asthma attack  COPD exacerbation  tracheostomy
              - {at: 30 min, fault: disconnection at the patient, for: 40 s}  apnoea: airway closed
            what if:
            events:
              - {at: 10 min, set: {fio2: 100 %}, for: 90 s}
            transport:\s
            patient:
              sex: female
              height: 170 cm
              weight: 74 kg
              illness: moderate pneumonia
              airway: tracheal tube 7.5 mm
            ventilator: example turbine
            ventilator: example pneumatic
            circuit: single limb adult
            filter: adult HME filter
            strategy: lung protective
            settings: {mode: A/C-VC, tidal volume: 400 mL, rate: 16 /min, fio2: 60 %, peep: 8 cmH2O}
            oxygen:
              - {name: portable, cylinder: 2 L, pressure: 185 bar, read at: 20 Cel, count: 2}
              - {name: vehicle, cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 2}
            power:
              - {name: internal, battery: example pack, charge: 90 %, age: 3 years}
              - {name: vehicle, mains: yes}
            legs:
              - {leg: road, takes: 45 min, at worst: 80 min, oxygen: [vehicle, portable], power: vehicle, noise: road}
              - {leg: flight, takes: 50 min, at worst: 75 min, oxygen: portable, power: internal, cabin altitude: 6500 ft, climb: 10 min, temperature: 12 Cel, noise: propeller}
            """).getBytes(StandardCharsets.UTF_8);

    private Packed() { }

    static String of(String text) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION, true);
        try {
            deflater.setDictionary(DICTIONARY);
            byte[] in = text.getBytes(StandardCharsets.UTF_8);
            deflater.setInput(in);
            deflater.finish();
            byte[] out = new byte[in.length + 64 + in.length / 1000];
            int n = deflater.deflate(out);
            return FIRST_DICTIONARY + Base64.getUrlEncoder().withoutPadding().encodeToString(java.util.Arrays.copyOf(out, n));
        } finally {
            deflater.end();
        }
    }

    /** The text; empty where the packed form is damaged or opens to more than {@link #MAX_TEXT_BYTES}. */
    static Optional<String> open(String packed) {
        if (packed == null || packed.length() < 2 || packed.charAt(0) != FIRST_DICTIONARY) return Optional.empty();
        Inflater inflater = new Inflater(true);
        try {
            inflater.setDictionary(DICTIONARY);
            inflater.setInput(Base64.getUrlDecoder().decode(packed.substring(1)));
            byte[] out = new byte[MAX_TEXT_BYTES + 1];
            int n = 0;
            while (!inflater.finished()) {
                int more = inflater.inflate(out, n, out.length - n);
                n += more;
                if (n > MAX_TEXT_BYTES || more == 0) return Optional.empty();
            }
            return Optional.of(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(out, 0, n)).toString());
        } catch (IllegalArgumentException | DataFormatException | CharacterCodingException e) {
            return Optional.empty();
        } finally {
            inflater.end();
        }
    }
}
