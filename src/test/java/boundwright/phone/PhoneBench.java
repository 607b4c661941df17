package boundwright.phone;

import boundwright.quantity.RefusedException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Writes the commands whose time {@code bench/phone} takes; run it by that script. */
public final class PhoneBench {
  private static final long SEED = 20_261_129;

  private PhoneBench() {}

  /** Arguments: file, days, taps. */
  public static void main(String[] args) throws IOException {
    ObjectMapper json = new ObjectMapper();
    List<String> out = new ArrayList<>();
    for (int d = 0; d < Integer.parseInt(args[1]); d++) {
      RandomDay day = new RandomDay(SEED + d);
      RunwayDay phone = RunwayDay.open(day.parcel());
      out.add(json.writeValueAsString(List.of("open", day.parcel().text())));
      int drill = day.parcel().plan().drills().isEmpty() ? 0 : 1;
      for (int t = 0; t < Integer.parseInt(args[2]); t++) {
        String line = day.tap(phone);
        out.add(json.writeValueAsString(List.of("add", line)));
        try {
          phone.add(line);
        } catch (RefusedException nonsense) {
          // refused in the browser too
        }
        for (Parcel.Part p : day.parcel().parts()) {
          out.add(json.writeValueAsString(List.of("card", p.profile().athlete().id(), drill)));
        }
      }
    }
    Files.write(Path.of(args[0]), out);
  }
}
