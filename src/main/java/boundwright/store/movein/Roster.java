package boundwright.store.movein;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import boundwright.store.NameKey;
import boundwright.store.Workbench;
import boundwright.track.Group;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A file of athletes. Who is here already is not changed, but for what is empty of them. */
final class Roster {
  private final Workbench bench;
  private final Columns columns;
  private final Days days;
  private final Map<String, Athlete> here;
  private final Map<Long, Person> people;
  private final Map<String, Group> groups;
  private final Set<String> seen = new HashSet<>();

  Roster(Workbench bench, Columns columns) {
    this.bench = bench;
    this.columns = columns;
    this.days = new Days(columns.order());
    this.here = bench.athletes().all().stream().collect(Collectors.toMap(a -> NameKey.of(a.name()), a -> a));
    this.people = bench.people().people();
    this.groups = bench.attendance().groups().stream().collect(Collectors.toMap(g -> NameKey.of(g.name()), g -> g));
  }

  /**
   * A row that can be taken.
   *
   * @param look how it is shown
   * @param there who is here already, or null
   * @param written the athlete as the file has them
   * @param born birth date to keep, or null
   * @param sex to keep, or null
   * @param level to keep of somebody who is here, or null
   * @param group to put them into; empty for none
   */
  private record Entry(
      RowLook look, @Nullable Athlete there, Athlete written, @Nullable LocalDate born, @Nullable Sex sex, @Nullable Level level, String group) {}

  List<RowLook> look(Sheet sheet) {
    List<RowLook> out = new ArrayList<>();
    read(sheet, new ArrayList<>(), out);
    return out;
  }

  private void read(Sheet sheet, List<Entry> good, List<RowLook> looks) {
    RowLook.each(sheet, this::entry, Entry::look, good, looks);
  }

  private Entry entry(Sheet.Row row) {
    String name = Cells.name(columns.cell(row, Field.NAME));
    Level level = Cells.level(columns.cell(row, Field.LEVEL));
    Foot leg = Cells.leg(columns.cell(row, Field.LEG));
    int steps = Cells.steps(columns.cell(row, Field.STEPS));
    String day = columns.cell(row, Field.BORN);
    LocalDate born = day.isEmpty() ? null : days.read("birth date", day);
    Person person = new Person(born, Cells.sex(columns.cell(row, Field.SEX)));
    if (born != null && born.isAfter(LocalDate.now(bench.clock()))) {
      throw new RefusedException("The birth date " + born + " lies after today. Check the year.");
    }
    String group = Cells.plain(columns.cell(row, Field.GROUP));
    if (!group.isEmpty()) {
      group = new Group(0, group, Set.of()).name();
    }
    Athlete written = new Athlete(0, name, level, leg == null ? Foot.RIGHT : leg, steps);
    if (!seen.add(NameKey.of(written.name()))) {
      throw new RefusedException(written.name() + " stands in the file twice. Names must differ by more than capitals: add an initial or a nickname.");
    }
    Athlete there = here.get(NameKey.of(written.name()));
    return there == null ? newcomer(row, written, person, leg == null, group) : known(row, there, written, person, leg == null, group);
  }

  private static Entry newcomer(Sheet.Row row, Athlete a, Person p, boolean legLeftOut, String group) {
    String told =
        a.name() + (p.born() == null ? "" : ", born " + p.born()) + (p.sex() == null ? "" : ", " + p.sex().label()) + ", " + a.level().label() + ", takes off "
            + a.takeOffFoot().label() + (legLeftOut ? " (not in the file)" : "") + ", " + Athlete.fromSteps(a.rung()) + (group.isEmpty() ? "" : ", in " + group);
    return new Entry(new RowLook(row.line(), RowLook.State.NEW, told), null, a, p.born(), p.sex(), null, group);
  }

  private Entry known(Sheet.Row row, Athlete there, Athlete written, Person p, boolean legLeftOut, String group) {
    Person was = people.getOrDefault(there.id(), Person.UNKNOWN);
    List<String> adds = new ArrayList<>();
    List<String> differs = new ArrayList<>();
    LocalDate born = was.born() == null ? p.born() : null;
    Sex sex = was.sex() == null ? p.sex() : null;
    Level level = there.level() == Level.NOT_SET && written.level() != Level.NOT_SET ? written.level() : null;
    Group in = groups.get(NameKey.of(group));
    boolean joins = !group.isEmpty() && (in == null || !in.members().contains(there.id()));
    if (born != null) {
      adds.add("born " + born);
    } else if (p.born() != null && !p.born().equals(was.born())) {
      differs.add("born " + was.born() + ", not " + p.born());
    }
    if (sex != null) {
      adds.add(sex.label());
    } else if (p.sex() != null && p.sex() != was.sex()) {
      differs.add("sex");
    }
    if (level != null) {
      adds.add(level.label());
    } else if (written.level() != Level.NOT_SET && written.level() != there.level()) {
      differs.add(there.level().label() + ", not " + written.level().label());
    }
    if (!legLeftOut && written.takeOffFoot() != there.takeOffFoot()) {
      differs.add("takes off " + there.takeOffFoot().label() + ", not " + written.takeOffFoot().label());
    }
    if (columns.place(Field.STEPS).isPresent() && !columns.cell(row, Field.STEPS).isEmpty() && written.rung() != there.rung()) {
      differs.add(Athlete.fromSteps(there.rung()) + ", not " + Athlete.fromSteps(written.rung()));
    }
    if (joins) {
      adds.add("in " + group);
    }
    String told =
        there.name() + (adds.isEmpty() ? "" : ": " + String.join(", ", adds)) + (differs.isEmpty() ? "" : (adds.isEmpty() ? ": " : "; ") + "stays " + String.join("; ", differs));
    RowLook.State state = adds.isEmpty() ? RowLook.State.THERE : RowLook.State.FILLS;
    return new Entry(new RowLook(row.line(), state, told), there, written, born, sex, level, joins ? group : "");
  }

  /** Takes what {@link #look} showed, inside the write of the caller. */
  void take(Sheet sheet, long number, ImportRows rows) {
    List<Entry> good = new ArrayList<>();
    read(sheet, good, new ArrayList<>());
    Map<String, Set<Long>> joining = new LinkedHashMap<>();
    Map<String, String> called = new HashMap<>();
    for (Entry e : good) {
      if (e.look.state() == RowLook.State.THERE) {
        continue;
      }
      long id = e.there == null ? add(e, number, rows) : fill(e, e.there, number, rows);
      if (!e.group.isEmpty()) {
        joining.computeIfAbsent(NameKey.of(e.group), k -> new LinkedHashSet<>()).add(id);
        called.putIfAbsent(NameKey.of(e.group), e.group);
      }
    }
    joining.forEach((key, who) -> join(called.getOrDefault(key, key), groups.get(key), who, number, rows));
  }

  private long add(Entry e, long number, ImportRows rows) {
    long id = bench.athletes().add(e.written).id();
    rows.came(number, ImportRows.Came.ATHLETE, id);
    bench.people().keep(id, new Person(e.born, e.sex));
    return id;
  }

  private long fill(Entry e, Athlete there, long number, ImportRows rows) {
    Person was = people.getOrDefault(there.id(), Person.UNKNOWN);
    if (e.born != null || e.sex != null) {
      bench.people().keep(there.id(), new Person(e.born == null ? was.born() : e.born, e.sex == null ? was.sex() : e.sex));
    }
    if (e.born != null) {
      rows.filled(number, there.id(), ImportRows.Filled.BORN);
    }
    if (e.sex != null) {
      rows.filled(number, there.id(), ImportRows.Filled.SEX);
    }
    if (e.level != null) {
      bench.athletes().update(new Athlete(there.id(), there.name(), e.level, there.takeOffFoot(), there.rung()));
      bench.logbook().relearn(there.id());
      rows.filled(number, there.id(), ImportRows.Filled.LEVEL);
    }
    return there.id();
  }

  private void join(String name, @Nullable Group there, Set<Long> who, long number, ImportRows rows) {
    Set<Long> members = new HashSet<>(who);
    if (there != null) {
      members.addAll(there.members());
    }
    Group kept = bench.attendance().keep(new Group(there == null ? 0 : there.id(), there == null ? name : there.name(), members));
    if (there == null) {
      rows.came(number, ImportRows.Came.GROUP, kept.id());
    }
    who.forEach(id -> rows.member(number, id, kept.id()));
  }
}
