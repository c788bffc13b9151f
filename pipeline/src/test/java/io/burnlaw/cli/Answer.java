package io.burnlaw.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * What a command answered.
 *
 * @param code exit code
 * @param out  results
 * @param err  messages
 */
record Answer(int code, String out, String err) {

    /** Runs a command inside of this process. */
    static Answer to(String... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(words);
        return new Answer(code, out.toString(), err.toString());
    }

    /** {@return the document that it printed} */
    JsonNode document() throws IOException {
        return JsonMapper.builder().build().readTree(out);
    }

    /** {@return the firing or strand of this id in its document} */
    JsonNode firing(String id) throws IOException {
        for (JsonNode firing : document().at("/firings")) {
            if (firing.at("/id").asText().equals(id)) {
                return firing;
            }
        }
        throw new AssertionError("no firing " + id + " in " + out);
    }
}
