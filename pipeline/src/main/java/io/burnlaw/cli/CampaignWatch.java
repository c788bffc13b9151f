package io.burnlaw.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Runs again whenever a file of a campaign changes: people add a firing and look again. */
final class CampaignWatch {

    /** An export program writes a file in several pieces; so long nothing may change before it is read. */
    private static final long QUIET_MILLISECONDS = 400;

    private CampaignWatch() {}

    /**
     * Repeats until the process is ended.
     *
     * @param campaigns folders to watch, with the folders in them
     * @param run       what to do
     * @param err       for messages
     * @return the last exit code, or not-written where the folders cannot be watched
     */
    static ExitCode repeat(List<Path> campaigns, Supplier<ExitCode> run, PrintWriter err) {
        ExitCode last = ExitCode.DONE;
        // One service for all the time: what changes while a run goes on is waiting when the run is done.
        try (WatchService watch = campaigns.get(0).getFileSystem().newWatchService()) {
            while (true) {
                for (Path campaign : campaigns) {
                    register(campaign, watch);
                }
                err.println("watching; a change of the campaign runs it again, Ctrl-C ends it");
                WatchKey key = watch.take();
                while (key != null) {
                    key.pollEvents();
                    key.reset();
                    key = watch.poll(QUIET_MILLISECONDS, TimeUnit.MILLISECONDS);
                }
                last = run.get();
            }
        } catch (IOException failed) {
            err.println(Terminal.safe("burnlaw: the campaign cannot be watched: " + failed));
            return ExitCode.UNUSABLE;
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
            return last;
        }
    }

    private static void register(Path campaign, WatchService watch) throws IOException {
        try (Stream<Path> below = Files.walk(campaign, 4)) {
            for (Path folder : below.filter(Files::isDirectory).toList()) {
                boolean report = Files.exists(folder.resolve("burnlaw.json"));
                if (!report && !folder.getFileName().toString().startsWith(".")) {
                    folder.register(
                            watch,
                            StandardWatchEventKinds.ENTRY_CREATE,
                            StandardWatchEventKinds.ENTRY_MODIFY,
                            StandardWatchEventKinds.ENTRY_DELETE);
                }
            }
        }
    }
}
