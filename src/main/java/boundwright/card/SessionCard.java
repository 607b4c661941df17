package boundwright.card;

import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is carried to the track: the day's work of one athlete, or of the squad. Lengths are already written in the
 * coach's unit, because a card is words on paper; nothing is computed from it.
 *
 * @param title what the coach calls the day
 * @param date the day, in words
 * @param place where
 * @param unit in which lengths are written
 * @param athlete the work of one athlete, or null on the squad's card
 * @param squad the work of the squad, or null on an athlete's card
 * @param lookFor the points to look for
 * @param cautions what keeps it safe
 * @param footnote printed at the end if not empty, for example that the squad is invented
 */
public record SessionCard(
    String title,
    String date,
    String place,
    LengthUnit unit,
    @Nullable AthletePage athlete,
    @Nullable SquadPage squad,
    List<String> lookFor,
    List<String> cautions,
    String footnote) {

  /** Takes copies; a card is for one athlete or for the squad. */
  public SessionCard {
    if ((athlete == null) == (squad == null)) {
      throw new IllegalArgumentException("a card is for one athlete or for the squad");
    }
    lookFor = List.copyOf(lookFor);
    cautions = List.copyOf(cautions);
  }

  /** Whom the card is for, as in a file's name or a page's title. */
  public String whom() {
    return athlete == null ? "Squad" : athlete.name();
  }

  /**
   * The one verdict of an athlete's day.
   *
   * @param said both halves in a line; empty when it was not asked
   * @param body a stop or a pain of these days, in a sentence; empty when there is none
   * @param backs what each leg on its way back may carry today, a sentence each
   * @param held whether bounding is stopped: no marks and no dose, only {@code body}
   */
  public record Day(String said, String body, List<String> backs, boolean held) {
    /** Nothing was asked. */
    static final Day NONE = new Day("", "", List.of(), false);

    /** Takes a copy. */
    public Day {
      backs = List.copyOf(backs);
    }

    static Day of(@Nullable DayVerdict day) {
      return of(day, List.of());
    }

    static Day of(@Nullable DayVerdict day, List<String> backs) {
      if (day == null) {
        return NONE;
      }
      return new Day(day.said(), day.body().map(day.held() ? Finding::said : Finding::brief).orElse(""), backs, day.held());
    }
  }

  /**
   * One athlete's page.
   *
   * @param name as called at the track
   * @param level in a word
   * @param rung {@code from 4 steps}
   * @param day the one verdict of the day
   * @param drills in order; none while bounding is stopped
   * @param right contacts on the right over the session
   * @param left contacts on the left over the session
   */
  public record AthletePage(String name, String level, String rung, Day day, List<DrillBlock> drills, int right, int left) {
    /** Takes a copy. */
    public AthletePage {
      drills = List.copyOf(drills);
    }

    /** Contacts of the session. */
    public int total() {
      return right + left;
    }

    /** How the legs share the session, in a sentence. */
    public String balance() {
      return SessionCards.balance(right, left);
    }
  }

  /**
   * One drill of one athlete.
   *
   * @param number 1 for the first of the day
   * @param sequence as the coach wrote it
   * @param from {@code from 4 steps}
   * @param flat whether it is done on the flat
   * @param dose {@code 2 sets of 3}
   * @param right contacts on the right over all sets and reps
   * @param left contacts on the left over all sets and reps
   * @param cut how the sequence was cut into sets, in a sentence; empty if it was not
   * @param variants the sequences that are done, each with its marks: as written first, then cut or mirrored ones
   * @param sets the sets in order
   * @param sure how sure the marks are, in a sentence
   * @param basis what they rest on, in a sentence
   * @param minds what must be known before taping, most important first
   */
  public record DrillBlock(
      int number,
      String sequence,
      String from,
      boolean flat,
      String dose,
      int right,
      int left,
      String cut,
      List<Variant> variants,
      List<SetLine> sets,
      String sure,
      String basis,
      List<String> minds) {
    /** Takes copies. */
    public DrillBlock {
      variants = List.copyOf(variants);
      sets = List.copyOf(sets);
      minds = List.copyOf(minds);
    }
  }

  /**
   * A sequence of the drill with its marks.
   *
   * @param sequence in letters
   * @param mirrored whether it is another one begun on the other foot
   * @param right contacts on the right in one rep
   * @param left contacts on the left in one rep
   * @param figures the marks and what goes with them, most important first
   * @param strip the picture for desk and paper, or null for a mirrored sequence
   * @param narrow the picture for a phone, or null for a mirrored sequence
   */
  public record Variant(
      String sequence,
      boolean mirrored,
      int right,
      int left,
      List<Figure> figures,
      @Nullable RunwayStrip strip,
      @Nullable RunwayStrip narrow) {
    /** Takes a copy. */
    public Variant {
      figures = List.copyOf(figures);
    }
  }

  /**
   * A figure that is read from afar.
   *
   * @param caption what it is
   * @param value with its unit
   * @param note a few small words below
   * @param explains whether the note only explains the caption, as the legend does on paper
   */
  public record Figure(String caption, String value, String note, boolean explains) {}

  /**
   * A set with room to write.
   *
   * @param number within the drill
   * @param sequence what is done, in letters
   * @param mirrored whether it was turned to the other leg to level the legs
   * @param reps how many boxes
   */
  public record SetLine(int number, String sequence, boolean mirrored, int reps) {}

  /**
   * The squad's page.
   *
   * @param measured from where lengths are measured and in what, in a sentence
   * @param drills the columns
   * @param rows the athletes
   * @param tapes the fewest tapes, from the nearest to the sand outwards
   * @param signs the signs that stand in the table, in one line with what each means
   * @param minds what must be known before taping, said once for all whom it concerns
   */
  public record SquadPage(
      String measured, List<SquadDrill> drills, List<SquadRow> rows, List<TapeLine> tapes, List<String> signs, List<String> minds) {
    /** Share of the width that the names take [%]. */
    private static final int NAMES = 19;

    /** How wide the column of a drill is [%]: the more boxes, the wider. */
    public int width(SquadDrill drill) {
      return (100 - NAMES) * weight(drill) / drills.stream().mapToInt(SquadPage::weight).sum();
    }

    private static int weight(SquadDrill drill) {
      return 2 + Math.max(2, Math.min(6, drill.reps()));
    }

    /** Takes copies. */
    public SquadPage {
      drills = List.copyOf(drills);
      rows = List.copyOf(rows);
      tapes = List.copyOf(tapes);
      signs = List.copyOf(signs);
      minds = List.copyOf(minds);
    }
  }

  /**
   * A drill of the squad.
   *
   * @param number 1 for the first of the day
   * @param sequence as written; if the drill was cut, the piece of which the column gives the mark
   * @param from {@code from 4 steps}, or {@code own steps}
   * @param dose {@code 2 sets of 3}
   * @param mirrored which sets are mirrored, in a few words; empty if none
   * @param flat whether it is done on the flat
   * @param reps how many boxes there are to write results in
   */
  public record SquadDrill(int number, String sequence, String from, String dose, String mirrored, boolean flat, int reps) {}

  /**
   * An athlete of the squad.
   *
   * @param name as called at the track
   * @param signs what the load says of the day, as signs
   * @param day the one verdict of the day
   * @param cells one for each drill
   */
  public record SquadRow(String name, String signs, Day day, List<SquadCell> cells) {
    /** Takes a copy. */
    public SquadRow {
      cells = List.copyOf(cells);
    }
  }

  /**
   * The marks of one athlete for one drill.
   *
   * @param mark take-off mark to sand, or on the flat the level ground needed
   * @param open whether the mark works
   * @param note beneath it: {@code start 9.10}, {@code unsure}; empty from standing into sand
   * @param signs what must be known before taping, as signs
   * @param reps how many boxes
   */
  public record SquadCell(String mark, boolean open, String note, String signs, int reps) {}

  /**
   * A tape.
   *
   * @param at from the near edge of the sand
   * @param serves whom: {@code Name, Name}, with the number of the drill where the day has several into sand
   */
  public record TapeLine(String at, String serves) {}
}
