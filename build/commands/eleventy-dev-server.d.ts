declare module "@11ty/eleventy-dev-server" {
  interface Answer {
    readonly headers: Readonly<Record<string, string>>;
    readonly body: string;
  }
  /** A small web server that tells its open pages to reload. */
  export default class EleventyDevServer {
    static getServer(
      name: string,
      dir: string,
      options?: {
        showAllHosts?: boolean;
        /** By pattern of address; undefined where the file on the disk is meant. */
        onRequest?: Readonly<Record<string, (asked: { readonly url: URL }) => Answer | undefined>>;
      },
    ): EleventyDevServer;
    serve(port: number): void;
    reload(event: { files: readonly string[] }): void;
    close(): Promise<void>;
  }
}
