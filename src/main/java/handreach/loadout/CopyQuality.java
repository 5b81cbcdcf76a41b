package handreach.loadout;

import handreach.input.Keyword;
import java.util.List;

/** Delivered audio quality, the scale of TIA TSB-88; SINAD equivalents from memory, but 17 dB for grade 3 (second hand). */
public enum CopyQuality {
    DAQ_2("daq-2", "understood with great effort, many repeats", 12),
    DAQ_3("daq-3", "slight effort, a repeat now and then", 17),
    DAQ_3_4("daq-3.4", "no repeats, some noise", 20),
    DAQ_4("daq-4", "easy, little noise", 25);

    /** How files and options name them. */
    public static final Keyword<CopyQuality> KEYWORD = Keyword.of(List.of(values()), CopyQuality::word);

    private final String word;
    private final String meaning;
    private final double sinadDb;

    CopyQuality(String word, String meaning, double sinadDb) {
        this.word = word;
        this.meaning = meaning;
        this.sinadDb = sinadDb;
    }

    public String word() {
        return word;
    }

    public String meaning() {
        return meaning;
    }

    /** Static SINAD of an analog receiver at this grade, dB. */
    public double sinadDb() {
        return sinadDb;
    }
}
