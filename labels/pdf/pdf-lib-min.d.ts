declare module 'pdf-lib/dist/pdf-lib.min.js' {
  import * as whole from 'pdf-lib';
  export default whole;
}
