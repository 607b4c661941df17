package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** Reads the cells of one line of reps; says everything that is wrong with it, not only the first thing. */
final class RepRow {
  /** Oldest date that is taken: what is older is a slip of the pen (judgement). */
  static final LocalDate OLDEST = LocalDate.of(1950, 1, 1);

  private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)");
  private static final Pattern WHOLE = Pattern.compile("[+-]?\\d{1,9}");

  private final Map<String, Integer> places;
  /** A squad runs few different sequences: each text is read once. */
  private final Map<String, Sequence> sequences = new HashMap<>();

  /**
   * Reads lines of one file.
   *
   * @param places which column stands where
   */
  RepRow(Map<String, Integer> places) {
    this.places = Map.copyOf(places);
  }

  /** Tells a row or adds a problem. */
  void read(int line, CSVRecord cells, Consumer<RepCsv.Row> rows, List<RepCsv.Problem> problems) {
    if (cells.size() != places.size()) {
      problems.add(
          new RepCsv.Problem(
              line,
              "The line has " + cells.size() + " cells, the first line names " + places.size()
                  + " columns. Cells are separated by commas; a cell with a comma in it goes in quotes."));
      return;
    }
    List<String> wrong = new ArrayList<>();
    String name = cell(cells, "athlete", wrong, text -> name(RepCsv.bare(text)));
    LocalDate date = cell(cells, "date", wrong, this::date);
    Sequence sequence = cell(cells, "sequence", wrong, text -> sequences.computeIfAbsent(RepCsv.bare(text), RepRow::sequence));
    Integer steps = cell(cells, "approach_steps", wrong, RepRow::steps);
    Surface surface = cell(cells, "surface", wrong, RepRow::surface);
    List<Double> prints = cell(cells, "footprints_m", wrong, RepRow::footprints);
    Maybe<Double> landing = cell(cells, "landing_m", wrong, text -> maybe(text, t -> number("landing", t)));
    Maybe<Ending> outcome = cell(cells, "outcome", wrong, text -> maybe(text, RepRow::ending));
    Maybe<Double> mark = cell(cells, "mark_to_sand_m", wrong, text -> maybe(text, t -> number("take-off mark", t)));
    Judgement judgement = cell(cells, "faults", wrong, text -> Judgement.read(RepCsv.bare(text)));
    if (name == null || date == null || sequence == null || steps == null || surface == null || prints == null || landing == null
        || outcome == null || mark == null || judgement == null) {
      problems.add(new RepCsv.Problem(line, String.join(" ", wrong)));
      return;
    }
    Rep rep =
        tried(
            wrong,
            () -> {
              judgement.within(sequence);
              return new Rep(
                  0,
                  0,
                  date,
                  sequence,
                  steps,
                  surface,
                  withoutLastSeparators(prints, sequence),
                  landing.value(),
                  outcome.value() == null ? null : outcome.value().outcome(),
                  outcome.value() == null ? null : outcome.value().after(),
                  mark.value(),
                  judgement.judged(),
                  judgement.faults());
            });
    if (rep == null) {
      problems.add(new RepCsv.Problem(line, String.join(" ", wrong)));
    } else {
      rows.accept(new RepCsv.Row(line, name, rep));
    }
  }

  /** A semicolon after the last footprint makes a print that was not seen, of a contact that is not there. */
  private static List<Double> withoutLastSeparators(List<Double> prints, Sequence sequence) {
    int n = prints.size();
    while (n >= sequence.size() && n > 0 && prints.get(n - 1).isNaN()) {
      n--;
    }
    return prints.subList(0, n);
  }

  /** A cell that may be empty, once it was read. */
  private record Maybe<T>(@Nullable T value) {}

  private static <T> Maybe<T> maybe(String text, Function<String, T> read) {
    return text.isEmpty() ? new Maybe<>(null) : new Maybe<>(read.apply(text));
  }

  private <T> @Nullable T cell(CSVRecord cells, String column, List<String> wrong, Function<String, T> read) {
    Integer place = places.get(column);
    String text = place == null ? "" : cells.get(place).strip();
    return tried(wrong, () -> read.apply(text));
  }

  private static <T> @Nullable T tried(List<String> wrong, Supplier<T> work) {
    try {
      return work.get();
    } catch (RefusedException e) {
      wrong.add(String.valueOf(e.getMessage()));
      return null;
    }
  }

  private static String name(String text) {
    PlainText.checked(text);
    if (text.indexOf('\uFFFD') >= 0) {
      throw new RefusedException("The name '" + text + "' has a character that could not be read. Save the file as CSV UTF-8.");
    }
    if (text.isEmpty()) {
      throw new RefusedException("The athlete is empty. Write the name called at the track.");
    }
    return new Athlete(0, text, Level.INTERMEDIATE, Foot.RIGHT, 0).name();
  }

  private LocalDate date(String text) {
    LocalDate date;
    try {
      date = LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new RefusedException("The date '" + text + "' is not a date. Write year-month-day, for example 2026-05-12.", e);
    }
    if (date.isBefore(OLDEST)) {
      throw new RefusedException("The date " + date + " is too old; the oldest that is taken is " + OLDEST + ". Check the year.");
    }
    return date;
  }

  private static Sequence sequence(String text) {
    try {
      return Sequence.parse(text);
    } catch (RefusedException e) {
      // The caret beneath the text has no place in a list of lines.
      String first = String.valueOf(e.getMessage()).lines().findFirst().orElse("");
      throw new RefusedException(text.isEmpty() ? first : "In the sequence '" + shortened(text) + "': " + first, e);
    }
  }

  private static int steps(String text) {
    if (!WHOLE.matcher(text).matches()) {
      throw new RefusedException(
          "The approach steps '" + shortened(text) + "' are not a whole number. Write 0 for standing, or the steps of the run-up, for example 4.");
    }
    return Athlete.checkSteps(Integer.parseInt(text));
  }

  private static Surface surface(String text) {
    String said = text.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    return Arrays.stream(Surface.values())
        .filter(s -> s.label().equals(said))
        .findFirst()
        .orElseThrow(
            () ->
                new RefusedException(
                    "The surface " + (text.isEmpty() ? "is empty" : "'" + shortened(text) + "' is not known") + ". Write "
                        + labels(Surface.values(), Surface::label) + "."));
  }

  /** A tap, and of an abandoned rep after which contact. */
  private record Ending(Outcome outcome, @Nullable Integer after) {}

  /** The outcome as a cell: {@code in}, or {@code abandoned@4} for a rep that broke off after contact 4. */
  static String written(Rep rep) {
    Outcome outcome = rep.outcome();
    return outcome == null ? "" : rep.brokeOffAfter() == null ? outcome.label() : outcome.label() + "@" + rep.brokeOffAfter();
  }

  private static Ending ending(String text) {
    int at = text.indexOf('@');
    if (at < 0) {
      return new Ending(outcome(text), null);
    }
    String contact = text.substring(at + 1).strip();
    if (!WHOLE.matcher(contact).matches()) {
      throw new RefusedException(
          "The outcome '" + shortened(text) + "' names no contact after the @. Write abandoned@4 for a rep that broke off after contact 4.");
    }
    return new Ending(outcome(text.substring(0, at).strip()), Integer.parseInt(contact));
  }

  private static Outcome outcome(String text) {
    String said = text.toLowerCase(Locale.ROOT);
    return Arrays.stream(Outcome.values())
        .filter(o -> o.label().equals(said))
        .findFirst()
        .orElseThrow(
            () ->
                new RefusedException(
                    "The outcome '" + shortened(text) + "' is not known. Write " + labels(Outcome.values(), Outcome::label)
                        + ", or leave it empty if a length says it."));
  }

  private static <T> String labels(T[] values, Function<T, String> label) {
    List<String> all = Arrays.stream(values).map(label).toList();
    return all.stream().limit(all.size() - 1L).collect(Collectors.joining(", ")) + " or " + all.get(all.size() - 1);
  }

  private static List<Double> footprints(String text) {
    return text.isEmpty() ? List.of() : Footprints.read(text, part -> number("footprint", part));
  }

  private static double number(String what, String text) {
    if (!NUMBER.matcher(text).matches()) {
      throw new RefusedException(
          "The " + what + " '" + shortened(text) + "' is not a number. Write metres with a point and without the unit, for example 3.45"
              + ("footprint".equals(what) ? ", with semicolons between footprints." : "."));
    }
    return Double.parseDouble(text);
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }
}
