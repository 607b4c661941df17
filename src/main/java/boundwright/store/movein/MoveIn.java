package boundwright.store.movein;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.person.Person;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import boundwright.store.AthleteFile;
import boundwright.store.RepImport;
import boundwright.store.Workbench;
import boundwright.track.Group;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Looks at a coach's file, takes it in one transaction, and takes it back whole. */
public final class MoveIn {
  /** What an athlete has who was only made by a file. */
  private static final Set<String> OF_A_FILE =
      Set.of("athlete", "athlete_token", "import_athlete", "import_file", "person", "group_member", "squad_group", "import_member");

  private final Workbench bench;
  private final ImportRows rows;

  /** Takes files into this store. */
  public MoveIn(Workbench bench) {
    this.bench = bench;
    this.rows = new ImportRows(bench.transactions());
  }

  /** What was chosen for a file with the same first line before, or else what the columns' names tell. */
  public Columns columns(Kind kind, Sheet sheet) {
    LengthUnit unit = bench.settings().settings().unit();
    Optional<String> before = rows.remembered(key(kind, sheet));
    if (before.isPresent()) {
      try {
        return Columns.read(kind, before.get(), sheet.header(), unit);
      } catch (RefusedException e) {
        return Columns.guessed(kind, sheet.header(), unit); // of another program
      }
    }
    return Columns.guessed(kind, sheet.header(), unit);
  }

  /** Whether columns were chosen for a file with the same first line before. */
  public boolean knows(Kind kind, Sheet sheet) {
    return rows.remembered(key(kind, sheet)).isPresent();
  }

  /** What the file was taken as before, or what its columns' names tell. */
  public Kind kind(Sheet sheet) {
    for (Kind k : Kind.values()) {
      if (knows(k, sheet)) {
        return k;
      }
    }
    return Columns.kind(sheet.header());
  }

  private static String key(Kind kind, Sheet sheet) {
    try {
      byte[] line = (kind + "\n" + String.join("\u001F", sheet.header())).getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(line));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * What a file becomes; nothing is taken.
   *
   * @throws RefusedException if a needed field has no column, or a column is not there
   */
  public Look look(Sheet sheet, Columns columns) {
    check(sheet, columns);
    Days.Told told = days(sheet, columns);
    Columns used = columns.order() == null ? columns.withOrder(told.order()) : columns;
    boolean ask = columns.order() == null && told.ask();
    List<RowLook> looks =
        switch (used.kind()) {
          case ROSTER -> new Roster(bench, used).look(sheet);
          case RESULTS -> new Results(bench, used).look(sheet);
          case REPS -> new MappedReps(sheet, used).look(new RepImport(bench));
        };
    return new Look(used, ask, looks);
  }

  private static void check(Sheet sheet, Columns columns) {
    List<Field> missing = columns.missing();
    if (!missing.isEmpty()) {
      throw new RefusedException(
          "No column is chosen for " + String.join(", ", missing.stream().map(Field::label).toList()) + ". Choose which column it is; " + columns.kind().label().toLowerCase(Locale.ROOT)
              + " cannot do without.");
    }
    for (int place : columns.places().values()) {
      if (place >= sheet.header().size()) {
        throw new RefusedException("The file has " + sheet.header().size() + " columns, not " + (place + 1) + ". Choose again which column is what.");
      }
    }
  }

  private static Days.Told days(Sheet sheet, Columns columns) {
    List<String> cells = new ArrayList<>();
    for (Field f : List.of(Field.BORN, Field.REP_DATE, Field.MEET_DATE)) {
      columns.place(f).ifPresent(p -> sheet.rows().forEach(r -> cells.add(r.cell(p))));
    }
    return Days.look(cells);
  }

  /**
   * What is taken of a file.
   *
   * @param skipBadRows whether the good rows are taken although there are bad ones; without it nothing is taken then
   * @param later whether reps that are dated after today are meant so
   * @param name what the file is called
   */
  public record Order(boolean skipBadRows, boolean later, String name) {
    /** A file's name may not break paper either. */
    public Order {
      PlainText.checked(name);
    }
  }

  /**
   * What became of a file.
   *
   * @param number of the import, by which it can be taken back; 0 if nothing was taken
   * @param look the file as it was when it was taken
   * @param taken rows that were taken
   */
  public record Result(long number, Look look, int taken) {}

  /**
   * Takes what is new in a file, all in one transaction, and remembers which column is what. Nothing is taken if a row is bad, unless that
   * was said.
   *
   * @throws RefusedException if a needed field has no column, or the order of days is not known
   */
  public Result take(Sheet sheet, Columns columns, Order order) {
    return bench.reps().write(
        w -> {
          Look look = look(sheet, columns);
          if (look.ask()) {
            throw new RefusedException("The days of this file can be read in two ways, such as 3.11. or 11.3. Say whether the day or the month comes first. Nothing was taken.");
          }
          int later = order.later() ? look.count(RowLook.State.LATER) : 0;
          int taken = look.takes() + later;
          if (taken == 0 || (!order.skipBadRows() && look.count(RowLook.State.BAD) > 0)) {
            return new Result(0, look, 0);
          }
          rows.remember(key(columns.kind(), sheet), look.columns().text());
          return new Result(inside(sheet, look.columns(), order), look, taken);
        });
  }

  private long inside(Sheet sheet, Columns used, Order order) {
    if (used.kind() == Kind.REPS) {
      return new MappedReps(sheet, used).take(new RepImport(bench), order.later(), order.name());
    }
    long number = rows.begin(used.kind(), order.name(), bench.clock().instant());
    if (used.kind() == Kind.ROSTER) {
      new Roster(bench, used).take(sheet, number, rows);
    } else {
      new Results(bench, used).take(sheet, number, rows);
    }
    return number;
  }

  /** The files that were taken and of which something is still here, newest first. */
  public List<Past> past(int most) {
    return rows.past(most);
  }

  /**
   * Takes an import back whole: what came with it goes, and what was empty before is empty again. Athletes whom it made stay if something
   * else is kept of them by now.
   *
   * @return what was taken back, in words
   * @throws RefusedException if nothing of it is here
   */
  public String takeBack(long number) {
    Kind kind = rows.kind(number).orElseThrow(() -> new RefusedException("Of import number " + number + " nothing is here (any more). Nothing was changed."));
    if (kind == Kind.REPS) {
      RepImport.TakenBack back = new RepImport(bench).takeBack(number);
      return Notes.counted(back.reps(), "rep") + (back.athletes() == 0 ? "" : " and " + Notes.counted(back.athletes(), "athlete") + " whom the file had made");
    }
    if (kind == Kind.RESULTS) {
      return bench.reps().write(
          w -> {
            int attempts = rows.dropResults(number);
            rows.end(number);
            return Notes.counted(attempts, "attempt");
          });
    }
    return rosterBack(number);
  }

  private String rosterBack(long number) {
    List<Long> made = rows.of(number, ImportRows.Came.ATHLETE);
    int emptied =
        bench.reps().write(
            w -> {
              List<ImportRows.Fill> filled = rows.filled(number);
              filled.forEach(this::empty);
              leaveGroups(number);
              rows.end(number);
              return filled.size();
            });
    int athletes = new AthleteFile(bench).eraseThoseWithOnly(OF_A_FILE, made);
    return Notes.counted(athletes, "athlete")
        + (emptied == 0 ? "" : " and " + Notes.counted(emptied, "entry", "entries"))
        + (athletes == made.size() ? "" : "; " + (made.size() - athletes) + " of whom more is kept by now " + (made.size() - athletes == 1 ? "stays" : "stay"));
  }

  private void empty(ImportRows.Fill fill) {
    Person was = bench.people().person(fill.athleteId());
    switch (fill.field()) {
      case BORN -> bench.people().keep(fill.athleteId(), new Person(null, was.sex()));
      case SEX -> bench.people().keep(fill.athleteId(), new Person(was.born(), null));
      case LEVEL -> {
        Athlete a = bench.athletes().byId(fill.athleteId()).orElseThrow();
        bench.athletes().update(new Athlete(a.id(), a.name(), Level.NOT_SET, a.takeOffFoot(), a.rung()));
        bench.logbook().relearn(a.id());
      }
    }
  }

  private void leaveGroups(long number) {
    List<Long> madeGroups = rows.of(number, ImportRows.Came.GROUP);
    List<ImportRows.Member> members = rows.members(number);
    for (Group g : bench.attendance().groups()) {
      Set<Long> left = new HashSet<>(g.members());
      members.stream().filter(m -> m.groupId() == g.id()).forEach(m -> left.remove(m.athleteId()));
      if (left.isEmpty() && madeGroups.contains(g.id())) {
        bench.attendance().removeGroup(g.id());
      } else if (left.size() < g.members().size()) {
        bench.attendance().keep(new Group(g.id(), g.name(), left));
      }
    }
  }
}
