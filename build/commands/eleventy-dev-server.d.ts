declare module "@11ty/eleventy-dev-server" {
  /** A small web server that tells its open pages to reload. */
  export default class EleventyDevServer {
    static getServer(name: string, dir: string, options?: { showAllHosts?: boolean }): EleventyDevServer;
    serve(port: number): void;
    reload(event: { files: readonly string[] }): void;
    close(): Promise<void>;
  }
}
