package boundwright.web.department;

import java.io.IOException;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A browser without scripts that goes to and fro between servers of this machine. One of them is said to stand behind a proxy: {@code https}
 * addresses are asked for over plain http, as the proxy would. Redirects are followed only when it is told to, since a test looks at them.
 */
final class Visitor {
  private final HttpClient http = HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();
  private final Map<String, Map<String, String>> cookies = new TreeMap<>();
  private String at = "";

  /** Where the last page was. */
  String at() {
    return at;
  }

  HttpResponse<String> get(String url) {
    return send(HttpRequest.newBuilder(plain(url)).GET(), url);
  }

  /** Sends a form; {@code fields} are names and values in turn. */
  HttpResponse<String> post(String url, String... fields) {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < fields.length; i += 2) {
      body.append(i == 0 ? "" : "&").append(enc(fields[i])).append('=').append(enc(fields[i + 1]));
    }
    HttpRequest.Builder request =
        HttpRequest.newBuilder(plain(url)).header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(body.toString()));
    return send(request, url);
  }

  /** Goes on while the answer leads elsewhere. */
  HttpResponse<String> follow(HttpResponse<String> answer, String unless) {
    HttpResponse<String> now = answer;
    for (int i = 0; i < 10 && now.headers().firstValue("Location").isPresent(); i++) {
      String next = URI.create(at).resolve(now.headers().firstValue("Location").orElseThrow()).toString();
      if (next.startsWith(unless)) {
        return now;
      }
      now = get(next);
    }
    return now;
  }

  /** Where the answer leads, by its {@code Location}. */
  String location(HttpResponse<String> answer) {
    return URI.create(at).resolve(answer.headers().firstValue("Location").orElseThrow(() -> new AssertionError(answer.statusCode() + answer.body()))).toString();
  }

  /** Where the page leads by itself. */
  static String refresh(HttpResponse<String> answer) {
    return answer.headers().firstValue("Refresh").orElseThrow(() -> new AssertionError(answer.statusCode() + " " + answer.body())).replaceFirst("^0; url=", "");
  }

  /** The value of the first field of this name. */
  static String field(String page, String name) {
    Matcher m = Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page);
    if (!m.find()) {
      throw new AssertionError("the page has no field " + name + ":\n" + page);
    }
    return m.group(1);
  }

  /** What stands behind the question mark. */
  static Map<String, String> query(String url) {
    Map<String, String> out = new LinkedHashMap<>();
    for (String pair : URI.create(url).getQuery().split("&", -1)) {
      out.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
    }
    return out;
  }

  /** What this browser was given by the server at this address. */
  Map<String, String> cookies(String url) {
    return cookies.computeIfAbsent(URI.create(url).getAuthority(), a -> new LinkedHashMap<>());
  }

  private static URI plain(String url) {
    return URI.create(url.replaceFirst("^https:", "http:"));
  }

  private HttpResponse<String> send(HttpRequest.Builder request, String url) {
    Map<String, String> held = cookies(url);
    if (!held.isEmpty()) {
      request.header("Cookie", String.join("; ", held.entrySet().stream().map(e -> e.getKey() + "=" + e.getValue()).toList()));
    }
    try {
      HttpResponse<String> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofString());
      at = url;
      for (String set : answer.headers().allValues("Set-Cookie")) {
        HttpCookie cookie = parsed(set);
        if (cookie.getMaxAge() == 0 || cookie.getValue().isEmpty()) {
          held.remove(cookie.getName());
        } else {
          held.put(cookie.getName(), cookie.getValue());
        }
      }
      return answer;
    } catch (IOException e) {
      throw new AssertionError(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  private static HttpCookie parsed(String set) {
    List<HttpCookie> all = HttpCookie.parse("Set-Cookie: " + set);
    return all.get(0);
  }

  private static String enc(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
