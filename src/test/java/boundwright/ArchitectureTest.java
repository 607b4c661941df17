package boundwright;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;

/**
 * The direction of the rooms: a lower room never knows a higher one. Each rule says why. The generated page templates
 * ({@code boundwright.pages}) are the drawing hand of {@code picture}, {@code card} and {@code web} and are looked at with them.
 */
@AnalyzeClasses(packages = "boundwright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  /** Each room and the rooms it may know, lowest first; a room that is not listed here fails the first rule. */
  private static final Map<String, Set<String>> MAY_KNOW = new TreeMap<>();

  private static void room(String name, String... below) {
    MAY_KNOW.put(name, Set.of(below));
  }

  static {
    room("quantity");
    room("evidence");
    room("inference", "quantity");
    room("machine");
    room("pairing", "quantity");
    room("account", "quantity");
    room("footfall", "quantity", "evidence");
    room("athlete", "quantity", "evidence", "inference", "footfall");
    room("flight", "quantity", "evidence", "footfall", "athlete");
    room("runway", "quantity", "evidence", "footfall", "athlete", "flight");
    room("takeoffs", "quantity", "evidence", "inference", "footfall", "athlete", "flight", "runway");
    room("jump", "quantity", "evidence", "inference", "footfall", "athlete", "flight");
    room("approach", "quantity", "evidence", "inference", "footfall", "athlete", "flight", "jump");
    room("meet", "quantity", "evidence", "inference", "footfall", "athlete", "jump", "approach");
    room("technique", "quantity", "evidence", "footfall", "athlete");
    room("load", "quantity", "evidence", "footfall", "athlete", "flight");
    room("clip", "quantity", "machine", "evidence", "footfall", "athlete", "flight", "technique");
    room("readiness", "quantity", "evidence", "footfall", "athlete", "flight", "load", "technique");
    room("season", "quantity", "evidence", "inference", "footfall", "athlete", "flight", "runway", "load", "readiness");
    String[] answers = {
      "quantity", "evidence", "footfall", "athlete", "flight", "runway", "takeoffs", "jump", "approach", "meet", "load", "technique", "readiness",
      "clip", "season"
    };
    room("picture", and(answers, "pages"));
    room("card", and(answers, "picture", "pages"));
    room("phone", "quantity", "evidence", "footfall", "athlete", "flight", "runway", "load", "picture");
    room("track", "quantity", "evidence", "footfall", "athlete", "flight", "runway", "load", "technique", "readiness");
    room("store", and(answers, "track", "pairing", "account"));
    room("demo", and(answers, "track", "store"));
    room("web", and(answers, "picture", "card", "store", "track", "demo", "phone", "pairing", "account", "machine", "pages"));
    room("cli", and(answers, "picture", "card", "store", "track", "demo", "pairing", "account", "web"));
  }

  private static String[] and(String[] rooms, String... more) {
    return Stream.concat(Arrays.stream(rooms), Arrays.stream(more)).toArray(String[]::new);
  }

  private static final String[] BELOW_STORE = {
    "boundwright.quantity..", "boundwright.evidence..", "boundwright.footfall..", "boundwright.athlete..",
    "boundwright.flight..", "boundwright.runway..", "boundwright.takeoffs..", "boundwright.inference..", "boundwright.jump..", "boundwright.approach..",
    "boundwright.meet..", "boundwright.load..", "boundwright.technique..", "boundwright.picture..",
    "boundwright.readiness..", "boundwright.card..", "boundwright.phone..", "boundwright.pairing..", "boundwright.account..", "boundwright.season.."
  };

  private static String room(JavaClass c) {
    String name = c.getPackageName();
    return name.startsWith("boundwright.") ? name.substring("boundwright.".length()).split("\\.", 2)[0] : "";
  }

  @ArchTest
  static void everyRoomKnowsOnlyTheRoomsBelowIt(JavaClasses all) {
    Set<String> rooms = new TreeSet<>();
    all.forEach(c -> rooms.add(room(c)));
    rooms.removeAll(Set.of("", "pages"));
    assertThat(MAY_KNOW.keySet())
        .as("a new room is added here together with its direction in the design, or nobody watches it")
        .containsAll(rooms);
    for (String room : rooms) {
      List<String> forbidden = new ArrayList<>(rooms);
      forbidden.add("pages");
      forbidden.removeAll(MAY_KNOW.getOrDefault(room, Set.of()));
      forbidden.remove(room);
      noClasses()
          .that().resideInAPackage("boundwright." + room + "..")
          .should().dependOnClassesThat(resideInAnyPackage(forbidden.stream().map(r -> "boundwright." + r + "..").toArray(String[]::new)))
          .because("a lower room that knows a higher one cannot be read, tested or changed without it (" + room + ")")
          .check(all);
    }
  }

  @ArchTest
  static final ArchRule NOBODY_KNOWS_THE_ENTRY_POINT =
      noClasses().that().resideInAPackage("boundwright.*..")
          .should().dependOnClassesThat().resideInAPackage("boundwright")
          .because("the entry point wires the rooms; a room that asks it is a service locator");

  @ArchTest
  static final ArchRule NO_CYCLES =
      slices().matching("boundwright.(quantity|evidence|inference|footfall|athlete|flight|runway|takeoffs|jump|approach|meet|season|picture|card|store|track|demo|phone|cli)..")
          .should().beFreeOfCycles()
          .because("rooms in a cycle are one room with a false wall in it");

  @ArchTest
  static final ArchRule NO_CYCLES_IN_A_ROOM =
      slices().matching("boundwright.(approach|picture).(*)..")
          .should().beFreeOfCycles()
          .because("a question that needs the answer of the next one and the other way round is one question");

  @ArchTest
  static final ArchRule NO_CYCLES_OF_PAGES =
      slices().matching("boundwright.web.(*)..")
          .should().beFreeOfCycles()
          .because("a family of pages that needs another, which needs it, is one family");

  @ArchTest
  static final ArchRule THE_FLOOR_OF_THE_PAGES_KNOWS_NO_PAGE =
      noClasses().that().resideInAPackage("boundwright.web.page..")
          .should().dependOnClassesThat().resideInAnyPackage(
              "boundwright.web.squad..", "boundwright.web.athlete..", "boundwright.web.watching..", "boundwright.web.jump..",
              "boundwright.web.meet..", "boundwright.web.clips..", "boundwright.web.files..", "boundwright.web.settings..", "boundwright.web.phones..", "boundwright.web.season..")
          .because("what all pages share is below them");

  @ArchTest
  static final ArchRule TIMES_OF_A_SESSION_ARE_BARE_NUMBERS =
      noClasses().that().resideInAPackage("boundwright.season.order.timing..")
          .should().dependOnClassesThat(
              resideInAnyPackage("boundwright..").and(not(resideInAPackage("boundwright.season.order.timing.."))))
          .because("what is proved about lanes and rests is checked against a slow model of the same numbers, and knows no athlete");

  @ArchTest
  static final ArchRule PLANS_KNOW_NO_SIMULATED_SEASON =
      noClasses().that().resideInAnyPackage(
              "boundwright.season", "boundwright.season.year..", "boundwright.season.weeks..", "boundwright.season.ladder..", "boundwright.season.solve..",
              "boundwright.season.mend..", "boundwright.season.check..", "boundwright.season.why..", "boundwright.season.conflict..", "boundwright.season.sheet..",
              "boundwright.season.calendar..", "boundwright.season.order..")
          .should().dependOnClassesThat().resideInAPackage("boundwright.season.chance..")
          .because("what is planned and mended must not depend on the chances that it is looked at with");

  @ArchTest
  static final ArchRule SQL_ONLY_IN_STORE =
      noClasses().that().resideOutsideOfPackage("boundwright.store..")
          .should().dependOnClassesThat().resideInAnyPackage(
              "java.sql..", "javax.sql..", "org.jdbi..", "org.flywaydb..", "org.sqlite..", "org.postgresql..", "com.zaxxer..", "com.github.kagkarlsson..")
          .because("the database can be changed only if one room knows it");

  @ArchTest
  static final ArchRule WHICH_DATABASE_ONLY_IN_ITS_ENGINE =
      noClasses().that().resideOutsideOfPackages("boundwright.store.engine..", "boundwright.store.backup..")
          .should().dependOnClassesThat().resideInAnyPackage("org.sqlite..", "org.postgresql..", "org.flywaydb..", "com.zaxxer..", "com.github.kagkarlsson..")
          .because("a repository's queries are for every database that a store can be in; a backup is an SQLite file whichever it is");

  @ArchTest
  static final ArchRule HTTP_ONLY_IN_WEB =
      noClasses().that().resideOutsideOfPackage("boundwright.web..")
          .should().dependOnClassesThat().resideInAnyPackage("io.javalin..", "org.eclipse.jetty..", "jakarta.servlet..", "java.net.http..")
          .because("rules that live in a web handler cannot be asked from the command line");

  @ArchTest
  static final ArchRule JSON_ONLY_AT_THE_EDGES =
      noClasses().that().resideOutsideOfPackages("boundwright.web..", "boundwright.cli..", "boundwright.store.season..")
          .should().dependOnClassesThat().resideInAPackage("com.fasterxml..")
          .because("a format for others belongs to the edge that speaks to them; a season's file is kept as it is sent, so it has one reader");

  @ArchTest
  static final ArchRule PICOCLI_ONLY_IN_CLI =
      noClasses().that().resideOutsideOfPackage("boundwright.cli..")
          .should().dependOnClassesThat().resideInAPackage("picocli..")
          .because("only the command line reads options");

  @ArchTest
  static final ArchRule EXACT_SEARCH_ONLY_FOR_CLASHES =
      noClasses().that().resideOutsideOfPackage("boundwright.season.conflict..")
          .should().dependOnClassesThat().resideInAnyPackage("org.chocosolver..", "com.google.ortools..")
          .because("plans are searched for by one solver; the other answers what clashes, and a third stays in the tests");

  @ArchTest
  static final ArchRule PDF_ONLY_IN_CARD =
      noClasses().that().resideOutsideOfPackage("boundwright.card..")
          .should().dependOnClassesThat().resideInAnyPackage("com.openhtmltopdf..", "org.apache.pdfbox..")
          .because("paper is the work of one room");

  @ArchTest
  static final ArchRule CSV_ONLY_IN_STORE =
      noClasses().that().resideOutsideOfPackage("boundwright.store..")
          .should().dependOnClassesThat().resideInAPackage("org.apache.commons.csv..")
          .because("the file format of reps is written down and read in one place");

  @ArchTest
  static final ArchRule THE_CLOCK_IS_HANDED_IN =
      noClasses().that().doNotHaveFullyQualifiedName("boundwright.Boundwright")
          .should().callMethodWhere(
              describe(
                  "reads the machine's clock",
                  call ->
                      (call.getTargetOwner().isEquivalentTo(Clock.class) && call.getName().startsWith("system"))
                          || (call.getName().equals("now")
                              && call.getTarget().getRawParameterTypes().stream().noneMatch(p -> p.isEquivalentTo(Clock.class))
                              && Set.of(
                                      LocalDate.class.getName(), LocalDateTime.class.getName(), LocalTime.class.getName(),
                                      Instant.class.getName(), ZonedDateTime.class.getName())
                                  .contains(call.getTargetOwner().getFullName()))
                          || (call.getTargetOwner().isEquivalentTo(System.class) && call.getName().equals("currentTimeMillis"))))
          .because("a test must be able to say which day it is");

  @ArchTest
  static final ArchRule CHANCE_IS_SEEDED =
      noClasses()
          .should().callConstructor(Random.class)
          .orShould().callMethod(Math.class, "random")
          .orShould().callMethod(java.util.concurrent.ThreadLocalRandom.class, "current")
          .because("the same reps must give the same mark on every machine and every day");

  @ArchTest
  static final ArchRule ONLY_THE_ENTRY_POINT_ENDS_THE_PROGRAM =
      noClasses().that().doNotHaveFullyQualifiedName("boundwright.Boundwright")
          .and().doNotHaveFullyQualifiedName("boundwright.clip.scan.ScanChild")
          .and().doNotHaveFullyQualifiedName("boundwright.clip.session.CutChild")
          .should().callMethod(System.class, "exit", int.class)
          .orShould().accessField(System.class, "out")
          .orShould().accessField(System.class, "err")
          .because("a room that prints or exits cannot be used from another; the child processes that scan and cut films are entry points too");

  @ArchTest
  static final ArchRule THE_MIDDLE_ROOMS_TOUCH_NO_FILES =
      noClasses().that().resideInAnyPackage(BELOW_STORE).and().resideOutsideOfPackage("boundwright.card..")
          .should().dependOnClassesThat().resideInAnyPackage("java.nio.file..", "java.net..")
          .because("what is thought about marks must not depend on a disk or a network");

  @ArchTest
  static final ArchRule NATIVE_CODE_STAYS_IN_FILM_AND_POSE =
      noClasses().that().resideOutsideOfPackages("boundwright.clip.film..", "boundwright.clip.pose..")
          .should().dependOnClassesThat().resideInAnyPackage("org.bytedeco..")
          .because("native memory can take the process down, so it is touched in two places only");

  @ArchTest
  static final ArchRule CORNERS_ARE_FOLLOWED_IN_ONE_CLASS =
      noClasses().that().resideOutsideOfPackage("boundwright.clip.camera..")
          .should().dependOnClassesThat().resideInAnyPackage("boofcv..", "georegression..", "org.ddogleg..", "org.ejml..")
          .because("the library that follows corners stays behind an interface, so that it can be exchanged");

  @ArchTest
  static final ArchRule NETWORK_AND_DECODER_RUN_IN_THE_CHILD =
      noClasses().that().resideOutsideOfPackages("boundwright.clip.film..", "boundwright.clip.pose..", "boundwright.clip.scan..", "boundwright.clip.session..")
          .should().dependOnClassesThat().haveFullyQualifiedName("boundwright.clip.film.Film")
          .orShould().dependOnClassesThat().haveFullyQualifiedName("boundwright.clip.pose.PoseNet")
          .orShould().dependOnClassesThat().haveFullyQualifiedName("boundwright.clip.scan.Scanner")
          .orShould().dependOnClassesThat().haveFullyQualifiedName("boundwright.clip.film.Glance")
          .orShould().dependOnClassesThat().haveFullyQualifiedName("boundwright.clip.session.Cutter")
          .because("a damaged film may end the child process, never the program");

  @ArchTest
  static final ArchRule LEARNING_STANDS_ABOVE_THE_READING =
      noClasses().that().resideInAPackage("boundwright.clip.(*)..").and().resideOutsideOfPackages("boundwright.clip.learn..", "boundwright.clip.desk..", "boundwright.clip.day..")
          .should().dependOnClassesThat().resideInAnyPackage("boundwright.clip.learn..")
          .because("a clip reads the same whether or not anybody learns from it");

  @ArchTest
  static final ArchRule LEARNING_KNOWS_NO_DESK_AND_NO_FILM =
      noClasses().that().resideInAPackage("boundwright.clip.learn..")
          .should().dependOnClassesThat().resideInAnyPackage("boundwright.clip.desk..", "boundwright.clip.day..", "boundwright.clip.session..", "boundwright.clip.pose..", "java.nio.file..")
          .because("it learns from points that were read already; where they lie and who may be learned from is the desk's business");

  @ArchTest
  static final ArchRule THE_BROWSERS_COMPILER_IS_KNOWN_AT_ITS_EDGE =
      noClasses().that().resideOutsideOfPackage("boundwright.phone.js..")
          .should().dependOnClassesThat().resideInAnyPackage("org.teavm..", "boundwright.phone.js..")
          .because("the rooms that a phone runs are the server's own, and know nothing of where they run");

  @ArchTest
  static final ArchRule CALENDARS_ARE_WRITTEN_IN_ONE_PLACE =
      noClasses().that().resideOutsideOfPackage("boundwright.store.calendar..")
          .should().dependOnClassesThat().resideInAnyPackage("net.fortuna.ical4j..")
          .because("the library of calendars is loaded only when one is asked for, and can be exchanged");

  @ArchTest
  static final ArchRule A_DEPARTMENTS_SERVER_IS_ASKED_IN_ONE_PLACE =
      noClasses().that().resideOutsideOfPackage("boundwright.web.department..")
          .should().dependOnClassesThat().resideInAnyPackage("com.nimbusds..", "net.minidev..")
          .because("who comes is an issuer and a subject, and how that was found out is the business of one room");

  @ArchTest
  static final ArchRule KEYS_ARE_MADE_IN_TWO_CLASSES =
      noClasses().that().doNotHaveFullyQualifiedName("boundwright.web.certificate.Issuer").and().doNotHaveFullyQualifiedName("boundwright.store.age.AgeHeader")
          .should().dependOnClassesThat().resideInAnyPackage("org.bouncycastle..")
          .because("nine megabytes are loaded only when a certificate is to be written or a backup is sealed");

  @ArchTest
  static final ArchRule SEALING_KNOWS_NO_ATHLETE =
      noClasses().that().resideInAPackage("boundwright.store.age..")
          .should().dependOnClassesThat(resideInAnyPackage("boundwright..").and(not(resideInAnyPackage("boundwright.store.age..", "boundwright.quantity.."))))
          .because("it is checked against the format's own vectors, and knows nothing of what it seals");

  @ArchTest
  static final ArchRule SAFETY_WORKS_ON_FILES =
      noClasses().that().resideInAPackage("boundwright.store.backup..")
          .should().dependOnClassesThat(resideInAnyPackage("boundwright..").and(not(resideInAnyPackage("boundwright.store.backup..", "boundwright.store.age..", "boundwright.quantity.."))))
          .because("a backup is also brought back where the database no longer opens");

  @ArchTest
  static final ArchRule NO_ATTIC =
      noClasses().should().resideInAnyPackage("..util..", "..utils..", "..helper..", "..common..")
          .because("a class without a room is a class that nobody finds");

  @ArchTest
  static void everyRoomIsNullMarked(JavaClasses all) {
    Set<String> bare = new TreeSet<>();
    for (JavaClass c : all) {
      if (!room(c).equals("pages") && !c.getPackage().isAnnotatedWith(NullMarked.class)) {
        bare.add(c.getPackageName());
      }
    }
    assertThat(bare).as("packages without @NullMarked: null must be said, not guessed").isEmpty();
  }
}
