package boundwright.web.clips;

import boundwright.card.PicturePng;
import boundwright.clip.FoundClip;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.FilmDoubts;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.picture.BodyPicture;
import boundwright.picture.film.FrameSheet;
import boundwright.picture.film.LongPhoto;
import boundwright.picture.film.LongPicture;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Pictures made of a clip: the whole rep in one, a frame with its figures to keep, and the list of frames to be played. */
public final class ClipPictureHandler {
  private static final int SAVED_PX = 2160;
  private static final int SHEET_PX = 960;

  private final Workbench bench;
  private final Pages pages;
  private final ClipLooks looks;
  private final ClipsHandler list;

  /** Made when the first picture is asked for. */
  private static final class Png {
    static final PicturePng WRITER = new PicturePng();
  }

  public ClipPictureHandler(Workbench bench, Pages pages, ClipLooks looks, ClipsHandler list) {
    this.bench = bench;
    this.pages = pages;
    this.looks = looks;
    this.list = list;
  }

  private record Read(ClipRecord clip, FoundClip points, ClipReading reading) {}

  private Read read(Context ctx) {
    ClipLooks.Look look = looks.look(ClipLooks.id(ctx));
    FoundClip points = look.points();
    ClipReading reading = look.reading();
    if (points == null || reading == null) {
      throw new RefusedException(look.refused().isEmpty() ? "The clip is " + look.clip().state().label() + ". Wait until it is read." : look.refused());
    }
    return new Read(look.clip(), points, reading);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  /** Why the athlete cannot be laid on the runway, or empty. */
  private static String notLaid(Read r) {
    return r.points.camera().noLengths().isPresent() || r.reading.remarks().contains(FilmDoubts.SLIDES)
        ? "Nobody can say where on the runway each frame belongs, because the ground was not followed in this film. Film from a stand, or with"
            + " more of the ground in sight, and the rep comes as one picture."
        : "";
  }

  /** The page with the whole rep in one picture. */
  public void whole(Context ctx) {
    Read r = read(ctx);
    ClipsView.Line line = list.line(r.clip, "/clips/" + r.clip.id(), true);
    String why = notLaid(r);
    LongPicture picture = why.isEmpty() ? LongPicture.of(r.reading, r.clip.markToSand_m(), unit()).orElse(null) : null;
    if (why.isEmpty() && picture == null) {
      why = "No contact shows enough of the athlete. Add the contacts by hand on the clip's page.";
    }
    pages.show(ctx, 200, "clips/whole", line.athlete() + ", the rep in one picture", "clips", new WholeView(line, picture, photoAddress(r), why, r.reading.scaled()));
  }

  private static String photoAddress(Read r) {
    return "/clips/" + r.clip.id() + "/whole.jpg?v=" + Integer.toHexString(List.of(r.clip.setup(), r.clip.corrections(), r.clip.added()).hashCode());
  }

  private byte[] photo(Read r, LongPicture picture) {
    return LongPhoto.jpeg(r.points, r.reading, picture.from(), picture.to(), picture.reach(), frame -> bytes(r.clip.id(), frame))
        .orElseThrow(() -> new Turned(404, "The pictures of this film are gone, so the rep cannot be shown in one. Its figures are kept."));
  }

  private byte @Nullable [] bytes(long clip, int frame) {
    Optional<Path> still = frame < 0 ? Optional.empty() : looks.desk().still(clip, frame);
    try {
      return still.isEmpty() ? null : Files.readAllBytes(still.get());
    } catch (IOException e) {
      throw new UncheckedIOException("a picture of the film could not be read", e);
    }
  }

  private LongPicture picture(Read r) {
    String why = notLaid(r);
    if (!why.isEmpty()) {
      throw new RefusedException(why);
    }
    return LongPicture.of(r.reading, r.clip.markToSand_m(), unit()).orElseThrow(() -> new RefusedException("No contact shows enough of the athlete."));
  }

  /** The photograph alone. */
  public void photo(Context ctx) {
    Read r = read(ctx);
    ctx.contentType("image/jpeg");
    ctx.header("Cache-Control", "private, max-age=600");
    ctx.result(photo(r, picture(r)));
  }

  /** The whole picture as a file. */
  public void savedWhole(Context ctx) {
    Read r = read(ctx);
    LongPicture picture = picture(r);
    send(ctx, Png.WRITER.render(picture.svg(data(photo(r, picture))), SAVED_PX), "rep-" + r.clip.id());
  }

  /** A frame with its figures as a file. */
  public void savedFrame(Context ctx) {
    Read r = read(ctx);
    int all = r.reading.athlete().pixels().frames();
    int n = Form.whole("frame", ctx.pathParam("frame").replaceFirst("\\.png$", ""));
    if (n < 1 || n > all) {
      throw new RefusedException("Frame " + n + " is not in the clip: its frames are 1 to " + all + ".");
    }
    BodyPicture body = BodyPicture.of(r.points, r.reading, n - 1, BodyPicture.Cut.NEAR);
    byte[] still = bytes(r.clip.id(), body.still());
    send(ctx, Png.WRITER.render(sheet(r, body).svg(still == null ? "" : data(still)), SHEET_PX), "frame-" + r.clip.id() + "-" + n);
  }

  private FrameSheet sheet(Read r, BodyPicture body) {
    int contact = r.reading.contactAt(body.time_s());
    ClipStage stage = new ClipStage(r.clip, r.reading, body, java.util.Set.of(), contact, -1, false, unit());
    List<String> lines = new ArrayList<>();
    lines.add(Figures.day(r.clip.date()) + ", frame " + stage.frame() + ", " + (stage.place().isEmpty() ? stage.time() : stage.place()));
    ReadContact c = stage.chosen();
    if (c != null) {
      lines.add("On the ground " + ClipStage.length(c.contact().duration_s()) + ", nine times in ten.");
      lines.addAll(c.posture(r.reading.scaled(), unit()));
    }
    return new FrameSheet(body, stage.name(), lines);
  }

  private static String data(byte[] jpeg) {
    return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg);
  }

  private static void send(Context ctx, byte[] png, String name) {
    ctx.contentType("image/png");
    ctx.header("Content-Disposition", "attachment; filename=\"" + name + ".png\"");
    ctx.result(png);
  }

  /**
   * Every frame whose picture is there, to be played: its number from 1, its picture's number, its time [ms], the middle of the body [px]. As
   * JSON, because only the page's script asks for it.
   */
  public void play(Context ctx) {
    Read r = read(ctx);
    StringBuilder out = new StringBuilder(16_000);
    out.append("{\"still\":\"").append(ClipStage.still(r.clip, "N")).append("\",\"width\":").append(r.points.film().width()).append(",\"height\":")
        .append(r.points.film().height()).append(",\"frames\":[");
    String between = "";
    double[] at = {r.points.film().width() / 2.0, r.points.film().height() / 2.0};
    for (int i = 0; i < r.reading.athlete().pixels().frames(); i++) {
      Spot s = r.reading.athlete().pixels().spot(BodyPoint.LEFT_HIP, i).towards(r.reading.athlete().pixels().spot(BodyPoint.RIGHT_HIP, i), 0.5);
      if (s.known()) {
        at = new double[] {s.x(), s.y()};
      }
      int film = r.points.firstFrame() + i;
      if (film >= 0 && looks.desk().still(r.clip.id(), film).isPresent()) {
        out.append(between)
            .append(String.format(Locale.ROOT, "[%d,%d,%.1f,%.0f,%.0f]", i + 1, film, 1000 * r.reading.time(i), at[0], at[1]));
        between = ",";
      }
    }
    ctx.contentType("application/json");
    ctx.result(out.append("]}").toString());
  }
}
