package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipState;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Stills;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.store.Workbench;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pictures that are made of a clip, asked for as a browser asks. The film is made up, its stills plain grey: only what is drawn matters here. */
@SuppressWarnings("NullAway.Init") // filled in before each test
class ClipPicturePagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final TrueClip TRUTH = TrueClip.of(Sequence.parse("RRL"), 1, 6, 60, Noise.NONE, false, 3);

  @TempDir Path folder;
  private final HttpClient http = HttpClient.newHttpClient();
  private Workbench bench;
  private WebServer server;
  private Client client;
  private long id;
  private CameraPath camera = CameraPath.stood();

  private FoundClip scan(ScanOrder order) {
    int n = TRUTH.found().frames();
    Path stills = Objects.requireNonNull(order.stills());
    try {
      Files.createDirectories(stills);
      Stills.full(stills, new Stills.Full(1280, 720));
      BufferedImage grey = new BufferedImage(640, 360, BufferedImage.TYPE_BYTE_GRAY);
      ImageIO.write(grey, "jpg", Stills.file(stills, 0).toFile());
      for (int i = 1; i < n; i++) {
        Files.copy(Stills.file(stills, 0), Stills.file(stills, i));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90_000, n, n / 60.0, Double.NaN), 0, TRUTH.found(), n, List.of(), camera);
  }

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY, (order, progress) -> scan(order));
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
  }

  private void read() throws InterruptedException {
    Athlete ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.BEGINNER, Foot.RIGHT, 2));
    ClipDesk desk = bench.clips();
    desk.start();
    id = desk.take(ilka.id(), null, "rep.mp4", new ByteArrayInputStream(new byte[] {1}), Sequence.parse("RRL"), 1, Surface.TRACK, null).id();
    for (int i = 0; i < 600 && desk.clip(id).state() != ClipState.READ; i++) {
      Thread.sleep(50);
    }
    assertThat(desk.clip(id).state()).isEqualTo(ClipState.READ);
    desk.setup(id, new Setup(TRUTH.marks(), new Setup.Pole(TRUTH.poleFoot(), TRUTH.poleTop(), TRUTH.pole_m()), List.of(), 1, DeLeva.MALE));
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private HttpResponse<byte[]> bytes(String path) throws IOException, InterruptedException {
    return http.send(HttpRequest.newBuilder(URI.create(client.base() + path)).build(), HttpResponse.BodyHandlers.ofByteArray());
  }

  @Test
  void theRepIsOnePictureOnThePageAndAsAFileAndIsPlayed() throws IOException, InterruptedException {
    read();
    ClipReading reading = bench.clips().reading(id);
    HttpResponse<String> page = client.get("/clips/" + id + "/whole");
    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.body()).contains("long-picture").contains("/clips/" + id + "/whole.jpg?v=").contains("free thigh").contains("Save as a picture");
    String trunk = Math.round(reading.contacts().get(reading.withNumber(1)).trunkLeanDeg()) + "°";
    assertThat(page.body()).as("the reading's own figure").contains(">" + trunk + "<");
    HttpResponse<byte[]> photo = bytes("/clips/" + id + "/whole.jpg");
    assertThat(photo.headers().firstValue("Content-Type")).contains("image/jpeg");
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(photo.body()));
    assertThat(image.getWidth()).isGreaterThan(3 * image.getHeight());
    HttpResponse<byte[]> saved = bytes("/clips/" + id + "/whole.png");
    assertThat(saved.headers().firstValue("Content-Disposition")).contains("attachment; filename=\"rep-" + id + ".png\"");
    assertThat(ImageIO.read(new ByteArrayInputStream(saved.body())).getWidth()).isEqualTo(2160);
    everyKeptFrameCanBePlayedAndOneSaved();
  }

  private void everyKeptFrameCanBePlayedAndOneSaved() throws IOException, InterruptedException {
    String play = client.get("/clips/" + id + "/play").body();
    assertThat(play).startsWith("{\"still\":\"/clips/" + id + "/still/N.jpg?v=").contains("\"width\":1280");
    assertThat(play.split("\\[", -1).length - 2).isEqualTo(TRUTH.found().frames());
    assertThat(play).contains("[1,0," + String.format(java.util.Locale.ROOT, "%.1f", 1000 * TRUTH.found().time(0)));
    HttpResponse<byte[]> frame = bytes("/clips/" + id + "/frame/10.png");
    assertThat(ImageIO.read(new ByteArrayInputStream(frame.body())).getWidth()).isEqualTo(960);
    HttpResponse<String> none = client.get("/clips/" + id + "/frame/9999.png");
    assertThat(none.statusCode()).isBetween(400, 499);
    assertThat(none.body()).contains("Frame 9999 is not in the clip");
    bench.clips().dropFilm(id);
    String left = client.get("/clips/" + id + "/play").body();
    assertThat(left.length()).as("of a dropped film only the contacts' pictures are played").isLessThan(play.length());
    assertThat(bytes("/clips/" + id + "/whole.jpg").statusCode()).as("made from what is kept").isEqualTo(200);
  }

  /** A plain background: the tick is kept with the clip and gives its lengths; taken back, they go. */
  @Test
  void oneTickSaysThatTheCameraStood() throws InterruptedException {
    camera = CameraPath.of(CameraPath.Kind.PLAIN);
    read();
    assertThat(bench.clips().reading(id).scaled()).isFalse();
    String page = client.get("/clips/" + id + "/marks").body();
    assertThat(page).contains("name=\"stood\"").contains("on a tripod");
    tick("yes");
    assertThat(bench.clips().reading(id).scaled()).isTrue();
    assertThat(client.get("/clips/" + id + "/marks").body()).containsPattern("name=\"stood\" value=\"yes\" checked");
    tick("");
    assertThat(bench.clips().reading(id).scaled()).isFalse();
  }

  /** Like everything else that was sent, the tick is still in the form that comes back; nothing of it is kept. */
  @Test
  void aRefusedFormComesBackWithItsTickAndKeepsNothing() throws InterruptedException {
    camera = CameraPath.of(CameraPath.Kind.PLAIN);
    read();
    String csrf = Client.hidden(client.get("/clips/" + id + "/marks").body(), "csrf");
    HttpResponse<String> refused =
        client.post("/clips/" + id + "/marks", "csrf", csrf, "count", "way", "slowed", "1", "model", "MALE", "gx0", "100", "gy0", "600", "gat0", "", "stood", "yes");
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("A ground mark has no distance").containsPattern("name=\"stood\" value=\"yes\" checked");
    assertThat(client.get("/clips/" + id + "/marks").body()).doesNotContainPattern("name=\"stood\" value=\"yes\" checked");
  }

  private void tick(String stood) {
    Setup setup = bench.clips().clip(id).setup();
    String csrf = Client.hidden(client.get("/clips/" + id + "/marks").body(), "csrf");
    List<String> fields = new ArrayList<>(List.of("csrf", csrf, "count", "way", "slowed", "1", "model", "MALE"));
    for (int i = 0; i < setup.ground().size(); i++) {
      fields.addAll(
          List.of("gx" + i, String.valueOf(setup.ground().get(i).picture().x()), "gy" + i, String.valueOf(setup.ground().get(i).picture().y()),
              "gat" + i, String.valueOf(setup.ground().get(i).at_m())));
    }
    if (!stood.isEmpty()) {
      fields.addAll(List.of("stood", stood));
    }
    HttpResponse<String> kept = client.post("/clips/" + id + "/marks", fields.toArray(String[]::new));
    assertThat(kept.statusCode()).as(kept.body()).isBetween(200, 303);
  }

  @Test
  void whereTheCameraMovedThereIsAReasonInPlaceOfThePicture() throws InterruptedException {
    camera = CameraPath.of(CameraPath.Kind.LOST);
    read();
    String page = client.get("/clips/" + id + "/whole").body();
    assertThat(page).contains("the ground was not followed").doesNotContain("long-picture\"").doesNotContain("Save as a picture");
  }
}
