package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.person.Scope;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.contact.Contact;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Correction;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.TrueClip;
import boundwright.demo.InventedFolder;
import boundwright.flight.Rep;
import boundwright.quantity.LengthUnit;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Films dropped in on a phone, read, marked, put right and logged. The films are made up ({@link MadeUpScan}); lengths are held
 * against the made-up truth, which is our own output.
 */
class ClipTest extends PhoneCase {
  private static final String FILM = "RRLRRL 7 60";

  @Override
  @BeforeEach
  void open() throws IOException {
    Clock clock = Clock.system(ZoneId.systemDefault());
    bench = Workbench.open(InventedFolder.fill(Files.createTempDirectory(folder, "data"), clock), clock, new MadeUpScan(8));
    bench.clips().start();
    complaints.clear();
    server = WebServer.start(bench, "127.0.0.1", 0);
    newPage(390, 844, true);
  }

  @Test
  void aFilmIsSentReadMarkedPutRightAndLogged() {
    send(FILM);
    look();
    assertThat(page.locator("#clip-work")).containsText("No lengths yet");
    assertThat(page.locator("#log-rep")).hasCount(0);
    assertThat(page.locator("#clip-work")).containsText("has no marks and so no lengths");
    mark();
    assertThat(page.locator(".said")).containsText("measured again");
    assertThat(page.locator(".strip-pair svg").first()).containsText("RRL");
    List<Contact> seen = reading().contacts().stream().map(c -> c.contact()).toList();
    TrueClip truth = MadeUpScan.clip(FILM);
    assertThat(seen).hasSizeGreaterThanOrEqualTo(3);
    for (Contact c : seen.stream().filter(c -> !c.bothFeet()).toList()) {
      double off = truth.athlete().mass().contacts().stream().mapToDouble(t -> Math.abs(t.toeX() - c.place_m().p50())).min().orElse(99);
      assertThat(off).as("a made-up foot stood where one was read, two marks put with a thumb [m]").isLessThan(0.3);
    }

    // a length is logged, taken back, and logged again
    Locator log = page.locator("#log-button");
    int before = bench.reps().inOrder(first().id()).size();
    List<String> ticked = tickedFaults();
    log.click();
    assertThat(page.locator(".logged")).containsText("Logged as rep");
    List<Rep> reps = bench.reps().inOrder(first().id());
    assertThat(reps).hasSize(before + 1);
    Rep rep = reps.stream().filter(r -> r.id() == clip().repId()).findFirst().orElseThrow();
    assertThat(rep.faults()).containsExactlyInAnyOrderElementsOf(ticked);
    assertThat(rep.footprints_m().get(0)).isCloseTo(
        reading().contacts().get(reading().withNumber(2)).contact().place_m().p50() - reading().contacts().get(reading().withNumber(1)).contact().place_m().p50(),
        org.assertj.core.data.Offset.offset(0.001));
    page.getByText("Take it back").click();
    assertThat(page.locator("#log-rep")).isVisible();
    assertThat(bench.reps().inOrder(first().id())).hasSize(before);
    assertThat(clip().repId()).isZero();
  }

  @Test
  void keysStepFramesAndPutThingsRightAtOnce() {
    send(FILM);
    context.close();
    newPage(1280, 900, false);
    look();
    int start = frame();
    page.keyboard().press("ArrowRight");
    assertFrame(start + 1);
    page.keyboard().press("ArrowRight");
    assertFrame(start + 2);
    page.keyboard().press("ArrowLeft");
    assertFrame(start + 1);
    assertThat(page.locator("#frame-time")).hasText(String.format(java.util.Locale.ROOT, "%.3f s", reading().time(start)));

    page.keyboard().press("t");
    assertThat(page.locator("#stage")).containsText("Set by hand");
    assertThat(clip().corrections()).hasSize(1).first().isInstanceOf(Correction.Touchdown.class);
    Contact c = reading().contacts().get(reading().contactAt(reading().time(start))).contact();
    assertThat(java.util.Objects.requireNonNull(c.touchdown_s()).p50()).isEqualTo(reading().time(start));
    page.keyboard().press("u");
    assertThat(page.locator(".said")).containsText("taken back");
    assertThat(clip().corrections()).isEmpty();

    String foot = page.locator("#stage-head").textContent();
    page.keyboard().press("x");
    assertThat(page.locator("#do-undo")).isVisible();
    assertThat(clip().corrections()).hasSize(1).first().isInstanceOf(Correction.ExchangeLegs.class);
    assertThat(page.locator("#stage-head")).not().hasText(foot);
    page.keyboard().press("u");
    assertThat(page.locator("#do-undo")).hasCount(0);

    int columns = page.locator(".film-strip > li").count();
    page.keyboard().press("Delete");
    assertThat(page.locator(".film-strip > li")).hasCount(columns - 1);
    page.keyboard().press("b");
    assertThat(page.locator(".begun")).isVisible();
    int begin = frame();
    for (int i = 1; i <= 6; i++) {
      page.keyboard().press("ArrowRight");
      assertFrame(begin + i);
    }
    page.keyboard().press("l");
    assertThat(page.locator(".film-strip > li")).hasCount(columns);
    assertThat(clip().corrections()).hasSize(2).last().isInstanceOf(Correction.AddContact.class);

    // what cannot be is said and changes nothing: a second contact may not end before it begins
    page.keyboard().press("b");
    assertThat(page.locator(".begun")).isVisible();
    page.keyboard().press("r");
    assertThat(page.locator(".refusal")).containsText("Set the touchdown before the toe-off");
    assertThat(page.locator(".begun")).isVisible();
    assertThat(clip().corrections()).hasSize(2);
    complaints.removeIf(m -> m.contains("422"));
  }

  @Test
  void aTapLeavesThePictureWhereItStandsAndTheAnswerIsInSight() {
    send(FILM);
    look();
    page.evaluate("document.getElementById('body-picture').scrollIntoView()");
    double stood = page.locator("#body-picture").boundingBox().y;
    String was = page.locator("#stage-head").textContent();
    page.locator("#do-legs").tap();
    assertThat(page.locator("#do-undo")).isVisible();
    assertThat(page.locator("#stage-head")).not().hasText(was);
    assertThat(page.locator("#body-picture").boundingBox().y).as("top of the picture on the screen [px]").isCloseTo(stood, org.assertj.core.data.Offset.offset(2.0));
    // a thumb scrolls to a button before it taps
    page.locator("#do-undo").scrollIntoViewIfNeeded();
    double then = page.locator("#body-picture").boundingBox().y;
    page.locator("#do-undo").tap();
    assertThat(page.locator(".said")).containsText("taken back");
    assertThat(page.locator(".said")).isInViewport();
    assertThat(page.locator("#body-picture").boundingBox().y).isCloseTo(then, org.assertj.core.data.Offset.offset(2.0));
    page.locator("#step-on").tap();
    assertThat(page.locator(".said")).hasCount(0);
  }

  @Test
  void aPointIsDraggedWithTheMouseAndMovedWithTheKeys() {
    send(FILM);
    context.close();
    newPage(1280, 900, false);
    look();
    Locator knee = page.locator("#dot-RIGHT_KNEE");
    knee.scrollIntoViewIfNeeded();
    BoundingBox box = knee.boundingBox();
    double was = Double.parseDouble(knee.getAttribute("cx"));
    page.mouse().move(box.x + box.width / 2, box.y + box.height / 2);
    page.mouse().down();
    page.mouse().move(box.x + box.width / 2 + 40, box.y + box.height / 2, new com.microsoft.playwright.Mouse.MoveOptions().setSteps(4));
    page.mouse().up();
    assertThat(page.locator("#do-undo")).isVisible();
    Correction.MovePoint moved = (Correction.MovePoint) clip().corrections().get(0);
    assertThat(moved.frame()).isEqualTo(frame() - 1);
    assertThat(moved.picture().x()).isGreaterThan(was + 3);
    assertThat(Double.parseDouble(knee.getAttribute("cx"))).isCloseTo(moved.picture().x(), org.assertj.core.data.Offset.offset(0.02));

    knee.focus();
    page.keyboard().press("Shift+ArrowUp");
    page.keyboard().press("Enter");
    assertThat(page.locator("#do-undo")).containsText("undo last of 2");
    Correction.MovePoint again = (Correction.MovePoint) clip().corrections().get(1);
    assertThat(again.picture().y()).isCloseTo(moved.picture().y() - 10, org.assertj.core.data.Offset.offset(0.02));
  }

  @Test
  void marksThatCannotHoldSaySoAndChangeNothing() {
    send(FILM);
    look();
    page.getByText("Put the marks").click();
    TrueClip truth = MadeUpScan.clip(FILM);
    tap(truth.marks().get(0).picture().x(), truth.marks().get(0).picture().y());
    page.fill("input[name=gat0]", "2");
    page.getByText("Keep the marks").click();
    assertThat(page.locator("#marks-error")).containsText("The ground needs at least 2 marks");
    // the second tape is looked for on another frame; what was put stays, and a distance without a place is not lost silently
    String shown = page.locator("#marks-still").getAttribute("href");
    page.getByText("later", new Page.GetByTextOptions().setExact(true)).click();
    assertThat(page.locator("#marks-still")).not().hasAttribute("href", shown);
    assertThat(page.locator("#marks-drawn .mark-put")).hasCount(1);
    page.fill("input[name=gat1]", "7");
    page.getByText("Keep the marks").click();
    assertThat(page.locator("#marks-error")).containsText("A ground mark says 7 but has no place");
    assertThat(page.locator("input[name=gat0]")).hasValue("2");
    assertThat(clip().setup().scaled()).isFalse();
    complaints.removeIf(m -> m.contains("422"));
  }

  @Test
  void marksOfATurningCameraBelongToTheirFrameAndAreDrawnInAll() {
    send("turned " + FILM);
    visit("/clips/" + clip().id() + "/marks");
    assertThat(page.locator("#camera-said")).containsText("turned by 20 degrees");
    assertThat(page.locator("#camera-said")).containsText("below 2 cm over 20 m");
    TrueClip truth = MadeUpScan.clip(FILM);
    CameraPath path = MadeUpScan.turned(truth);
    GroundMarks.Mark one = truth.marks().get(1);
    GroundMarks.Mark other = truth.marks().get(3);
    int frame = Integer.parseInt(page.locator("#marks-form input[name=frame]").inputValue()) - 1;
    Spot at = path.back(frame, one.picture());
    tap(at.x(), at.y());
    page.fill("input[name=gat0]", String.valueOf(one.at_m()));
    String drawn = page.locator("#marks-drawn .mark-put path").first().getAttribute("d");
    page.getByText("later", new Page.GetByTextOptions().setExact(true)).click();
    assertThat(page.locator("#marks-drawn .mark-put path").first()).not().hasAttribute("d", drawn);
    int later = Integer.parseInt(page.locator("#marks-form input[name=frame]").inputValue()) - 1;
    Spot then = path.back(later, other.picture());
    tap(then.x(), then.y());
    page.fill("input[name=gat1]", String.valueOf(other.at_m()));
    page.getByText("Keep the marks").click();
    assertThat(page.locator("#clip-work")).isVisible();
    assertThat(clip().setup().ground().stream().map(GroundMarks.Mark::frame).toList()).isEqualTo(List.of(frame, later));
    assertThat(clip().setup().ground().get(1).picture().to(then)).as("put where it was tapped [px]").isLessThan(6);
    List<Contact> seen = reading().contacts().stream().map(c -> c.contact()).filter(c -> !c.bothFeet()).toList();
    for (Contact c : seen) {
      double off = truth.athlete().mass().contacts().stream().mapToDouble(t -> Math.abs(t.toeX() - c.place_m().p50())).min().orElse(99);
      assertThat(off).as("a made-up foot stood where one was read, two marks put with a thumb [m]").isLessThan(0.35);
    }
  }

  @Test
  void whatStandsAtAKnownPlaceIsAMarkByOneTap() {
    send(FILM);
    visit("/clips/" + clip().id() + "/marks");
    TrueClip truth = MadeUpScan.clip(FILM);
    Spot one = truth.marks().get(1).picture();
    Spot other = truth.marks().get(3).picture();
    tap(one.x(), one.y());
    page.getByText("board at 11").click();
    tap(other.x(), other.y());
    page.getByText("sand, near edge").click();
    page.getByText("Keep the marks").click();
    assertThat(page.locator("#clip-work")).isVisible();
    List<Double> put = clip().setup().ground().stream().map(GroundMarks.Mark::at_m).toList();
    assertThat(put).hasSize(2);
    assertThat(put.get(1) - put.get(0)).isCloseTo(11, org.assertj.core.data.Offset.offset(1e-9));
    // the take-off mark of this clip and the sand's far edge are offered too, the other marks first
    visit("/clips/" + clip().id() + "/marks");
    assertThat(page.locator("#known-places button")).hasCount(clip().markToSand_m() == null ? 4 : 5);
  }

  @Test
  void marksOfAnotherClipAreWrittenDownAndKeptOnlyWhenTheCoachSaysSo() {
    send(FILM);
    mark();
    List<Double> put = clip().setup().ground().stream().map(GroundMarks.Mark::at_m).toList();
    visit("/clips?athlete=" + first().id());
    page.setInputFiles("#film", film(FILM));
    page.getByText("Take the films").click();
    assertThat(page.locator(".clip-row .state-word")).hasText(new String[] {"read", "read"}, new LocatorAssertions.HasTextOptions().setTimeout(60_000));
    visit("/clips/" + clip().id() + "/marks");
    page.getByText("Begin with the marks of").click();
    assertThat(page.locator("#marks-drawn .mark-put")).hasCount(2);
    assertThat(clip().setup().scaled()).isFalse();
    page.locator("#marks-form button[type=submit]").click();
    assertThat(page.locator(".said")).containsText("measured again");
    assertThat(clip().setup().ground().stream().map(GroundMarks.Mark::at_m).toList()).isEqualTo(put);
  }

  @Test
  void aFilmWithNobodyIsRefusedInWordsAndReadAgainWithABox() {
    visit("/clips");
    page.setInputFiles("#film", film("nobody"));
    // nobody is chosen beforehand, or a hurried thumb gives the film to the first of the list
    assertThat(page.locator("#film-athlete")).hasValue("");
    page.selectOption("#film-athlete", String.valueOf(first().id()));
    page.getByText("Take the films").click();
    assertThat(page.locator(".clip-row")).containsText("Nobody was seen", waiting());
    page.locator("a.button[href$='/box']").click();
    assertThat(page.locator("#box-picture")).isVisible();
    BoundingBox box = page.locator("#box-picture").boundingBox();
    page.mouse().move(box.x + 40, box.y + 40);
    page.mouse().down();
    page.mouse().move(box.x + 140, box.y + 160);
    page.mouse().up();
    page.getByText("Read again with this box").click();
    assertThat(page.locator(".film-strip")).isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(60_000));
    assertThat(java.util.Objects.requireNonNull(clip().box()).width()).isCloseTo(100 * 1280 / box.width, org.assertj.core.data.Offset.offset(8.0));
  }

  @Test
  void aFilmOfSomebodyWhomNobodyAskedIsNotRead() {
    bench.people().say(first().id(), Scope.FILM, false);
    visit("/clips?athlete=" + first().id());
    page.setInputFiles("#film", film(FILM));
    page.getByText("Take the films").click();
    assertThat(page.locator("#film-error")).containsText("may not be filmed, as said on");
    assertThat(bench.clips().all()).isEmpty();
    complaints.removeIf(c -> c.contains("422"));
    page.setInputFiles("#film", film(FILM));
    page.locator("[name=may]").check();
    page.getByText("Take the films").click();
    assertThat(page.locator(".said")).containsText("1 film taken");
    assertThat(page.locator("[name=may]")).hasCount(0);
  }

  @Test
  void severalFilmsInOneGoThenOneIsRemovedAndTwoAreLaidSideBySide() {
    visit("/clips?athlete=" + first().id());
    page.setInputFiles("#film", new FilePayload[] {film(FILM), film("RRLRRL 11 60"), film("slow RRL 3 60")});
    page.getByText("Take the films").click();
    assertThat(page.locator(".said")).containsText("3 films taken");
    assertThat(page.locator(".clip-row .state-word")).hasText(new String[] {"read", "read", "read"}, new LocatorAssertions.HasTextOptions().setTimeout(90_000));
    List<ClipRecord> all = bench.clips().all();
    visit("/clips/" + all.get(2).id());
    page.getByText("Side by side").click();
    assertThat(page).hasURL(Pattern.compile("compare\\?a="));
    assertThat(page.locator(".pair-when")).containsText("at touchdown");
    page.locator("#step-on").click();
    assertThat(page.locator(".pair-when")).containsText(Pattern.compile("1[67] ms after touchdown"));
    assertThat(page.locator(".half svg.body-picture")).hasCount(2);

    visit("/clips/compare?a=" + all.get(2).id() + "&b=" + all.get(1).id() + "&at=2");
    assertThat(page.locator(".pair-strip a[aria-current]")).hasText(Pattern.compile("^\\s*2"));
    page.locator(".pair-strip a").nth(2).click();
    assertThat(page.locator(".pair-when")).containsText("of contact 3");

    visit("/clips/" + all.get(0).id());
    page.getByText("Take 4 times slower").click();
    assertThat(page.locator(".said")).containsText("those of the athlete");
    assertThat(bench.clips().clip(all.get(0).id()).setup().slowed()).isEqualTo(4);

    visit("/clips");
    page.locator("#clip-" + all.get(0).id()).getByText("remove", new Locator.GetByTextOptions().setExact(true)).click();
    page.getByText("Yes, remove it").first().click();
    assertThat(page.locator(".said")).containsText("removed");
    assertThat(bench.clips().all()).hasSize(2);
  }

  @Test
  void aFilmLetGoBesideTheFieldIsTaken() {
    visit("/clips?athlete=" + first().id());
    page.evaluate(
        "const held = new DataTransfer(); held.items.add(new File(['x'], 'beside.mp4', {type: 'video/mp4'}));"
            + " document.querySelector('h1').dispatchEvent(new DragEvent('drop', {bubbles: true, cancelable: true, dataTransfer: held}));");
    assertThat((String) page.evaluate("document.getElementById('film').files[0].name")).isEqualTo("beside.mp4");
  }

  @Test
  void noPageScrollsSidewaysAndEveryTargetIsLargeEnough() {
    send(FILM);
    mark();
    String own = "/clips/" + clip().id();
    List<String> paths = new ArrayList<>(List.of("/clips", own, own + "?frame=30&begin=20", own + "/marks", own + "/box", "/settings"));
    paths.add("/clips/compare?a=" + clip().id() + "&b=" + clip().id() + "&at=1");
    paths.add("/athlete/" + first().id());
    for (LengthUnit unit : LengthUnit.values()) {
      assertFits(paths, unit, "");
    }
  }

  @Test
  void aSwipeStepsFramesOnThePhone() {
    send(FILM);
    look();
    int start = frame();
    page.locator("#body-picture").scrollIntoViewIfNeeded();
    BoundingBox box = page.locator("#body-picture").boundingBox();
    String swipe =
        "([x, y]) => { const s = document.getElementById('body-picture'); const go = (t, dx) => s.dispatchEvent(new PointerEvent(t,"
            + " {pointerId: 7, pointerType: 'touch', clientX: x + dx, clientY: y, bubbles: true, button: 0}));"
            + " go('pointerdown', 0); go('pointermove', -30); go('pointerup', -30); }";
    page.evaluate(swipe, List.of(box.x + 150, box.y + 40));
    assertFrame(start + 1);
  }

  // ---- what a coach does ----

  private void send(String text) {
    visit("/clips?athlete=" + first().id());
    page.setInputFiles("#film", film(text));
    page.selectOption("#film-sequence", "other");
    page.locator("#film-more summary").click();
    page.fill("#film-other", "RRL x2");
    page.fill("#film-mark", "13.20");
    page.getByText("Take the films").click();
    assertThat(page.locator(".said")).containsText("1 film taken");
    assertThat(page.locator(".clip-row .state-word")).hasText("read", new LocatorAssertions.HasTextOptions().setTimeout(60_000));
  }

  private static FilePayload film(String text) {
    return new FilePayload("rep.mp4", "video/mp4", text.getBytes(StandardCharsets.UTF_8));
  }

  private static LocatorAssertions.ContainsTextOptions waiting() {
    return new LocatorAssertions.ContainsTextOptions().setTimeout(30_000);
  }

  private void look() {
    visit("/clips/" + clip().id());
    assertThat(page.locator("#stage")).isVisible();
  }

  private void mark() {
    visit("/clips/" + clip().id() + "/marks");
    TrueClip truth = MadeUpScan.clip(FILM);
    List<GroundMarks.Mark> marks = truth.marks();
    for (int i : new int[] {0, marks.size() - 1}) {
      tap(marks.get(i).picture().x(), marks.get(i).picture().y());
      page.fill("input[name=gat" + (i == 0 ? 0 : 1) + "]", String.valueOf(marks.get(i).at_m()));
    }
    page.getByText("Keep the marks").click();
    assertThat(page.locator("#clip-work")).isVisible();
  }

  private void tap(double x, double y) {
    page.locator("#marks-picture").scrollIntoViewIfNeeded();
    BoundingBox box = page.locator("#marks-picture").boundingBox();
    page.mouse().click(box.x + x * box.width / 1280, box.y + y * box.height / 720);
  }

  private List<String> tickedFaults() {
    List<String> out = new ArrayList<>();
    for (Locator l : page.locator("#log-rep input[name=fault]:checked").all()) {
      out.add(l.getAttribute("value"));
    }
    return out;
  }

  private ClipRecord clip() {
    List<ClipRecord> read = bench.clips().all().stream().filter(c -> c.state() == ClipState.READ).toList();
    return read.get(0);
  }

  private ClipReading reading() {
    return bench.clips().reading(clip().id());
  }

  private int frame() {
    return Integer.parseInt(page.locator("#stage").getAttribute("data-frame"));
  }

  private void assertFrame(int n) {
    assertThat(page.locator("#stage")).hasAttribute("data-frame", String.valueOf(n));
  }
}
