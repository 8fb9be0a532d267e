// The C twin of the exact breaths, for timing only: gcc -O3 -march=native breath.c -lm -o breath && ./breath
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
static double now(void){struct timespec t;clock_gettime(CLOCK_THREAD_CPUTIME_ID,&t);return t.tv_sec+1e-9*t.tv_nsec;}
typedef struct{double R,Re,C,vt,ti,tp,te,peep,dp;}Set;
typedef struct{double v,vt,peak,plat,tpeep,mean,qe;}Out;
#define NP 64
static Set S[NP];
static void vc(const Set*s,Out*o){ // constant flow, pause, passive expiration
  double v0=o->v,F=s->vt/s->ti,v1=v0+s->vt,v8=s->C*s->peep,tau=s->Re*s->C;
  double e=exp(-s->te/tau),d=v1-v8,ve=v8+d*e,iC=1/s->C;
  o->peak=v1*iC+s->R*F;o->plat=v1*iC;o->tpeep=ve*iC;o->vt=v1-ve;o->qe=-d*e/tau;
  o->mean=(s->ti*((v0+v1)*.5*iC+s->R*F)+s->tp*v1*iC+s->te*s->peep)/(s->ti+s->tp+s->te);o->v=ve;}
static void pc(const Set*s,Out*o){ // square pressure, passive expiration
  double v0=o->v,P=s->peep+s->dp,vi=s->C*P,ti=s->ti+s->tp,a=exp(-ti/(s->R*s->C));
  double v1=vi+(v0-vi)*a,v8=s->C*s->peep,tau=s->Re*s->C,e=exp(-s->te/tau),d=v1-v8,ve=v8+d*e,iC=1/s->C;
  o->peak=P;o->plat=v1*iC;o->tpeep=ve*iC;o->vt=v1-ve;o->qe=-d*e/tau;
  o->mean=(ti*P+s->te*s->peep)/(ti+s->te);o->v=ve;}
// two compartments + circuit: x=(Pc,v1,v2); modes of x' = A x + b
typedef struct{double lam[3],V[9],W[9],xs[3],ramp[3];}Mode; // x(t)=xs+ramp t+V exp(lam t) W (x0-xs)
static const double R0=6,R1=6,R2=18,C1=.020,C2=.014,Cc=.0015,Rv=3;
static void build(Mode*m,double F,int expi,double peep){ // symmetric form, Jacobi
  double c[3]={Cc,C1,C2},g0=1/R0,g1=1/R1,g2=1/R2,gs=g0+g1+g2,G[3]={g0,g1,g2},S3[3][3],Q[3][3]={{1,0,0},{0,1,0},{0,0,1}};
  for(int i=0;i<3;i++)for(int j=0;j<3;j++)S3[i][j]=((i==j?G[i]:0)-G[i]*G[j]/gs+(expi&&i==0&&j==0?1/Rv:0))/sqrt(c[i]*c[j]);
  for(int it=0;it<30;it++)for(int p=0;p<2;p++)for(int q=p+1;q<3;q++){ if(fabs(S3[p][q])<1e-300)continue;
    double th=(S3[q][q]-S3[p][p])/(2*S3[p][q]),t=(th<0?-1:1)/(fabs(th)+sqrt(th*th+1)),cc=1/sqrt(t*t+1),ss=t*cc;
    for(int k=0;k<3;k++){double a=S3[k][p],b=S3[k][q];S3[k][p]=cc*a-ss*b;S3[k][q]=ss*a+cc*b;}
    for(int k=0;k<3;k++){double a=S3[p][k],b=S3[q][k];S3[p][k]=cc*a-ss*b;S3[q][k]=ss*a+cc*b;}
    for(int k=0;k<3;k++){double a=Q[k][p],b=Q[k][q];Q[k][p]=cc*a-ss*b;Q[k][q]=ss*a+cc*b;}}
  // x=(p,v1,v2) with pressures y=(p,v1/C1,v2/C2); z=sqrt(c) y ; z'=-S z + src
  double cv[3]={1,C1,C2};for(int k=0;k<3;k++){m->lam[k]=-S3[k][k];if(fabs(m->lam[k])<1e-9)m->lam[k]=0;}
  for(int i=0;i<3;i++)for(int k=0;k<3;k++){m->V[3*i+k]=cv[i]*Q[i][k]/sqrt(c[i]);m->W[3*k+i]=Q[i][k]*sqrt(c[i])/cv[i];}
  for(int i=0;i<3;i++){m->xs[i]=0;m->ramp[i]=0;}
  double src0=expi?peep/Rv/sqrt(Cc):F/sqrt(Cc);
  for(int k=0;k<3;k++){double s=Q[0][k]*src0;for(int i=0;i<3;i++){if(m->lam[k]==0)m->ramp[i]+=m->V[3*i+k]*s;else m->xs[i]+=m->V[3*i+k]*(-s/m->lam[k]);}}}
static inline void step(const Mode*m,double*x,double t){double y[3];double d0=x[0]-m->xs[0],d1=x[1]-m->xs[1],d2=x[2]-m->xs[2];
  for(int k=0;k<3;k++)y[k]=(m->W[3*k]*d0+m->W[3*k+1]*d1+m->W[3*k+2]*d2)*exp(m->lam[k]*t);
  for(int i=0;i<3;i++)x[i]=m->xs[i]+m->ramp[i]*t+m->V[3*i]*y[0]+m->V[3*i+1]*y[1]+m->V[3*i+2]*y[2];}
#define REP 15
#define BENCH(name,n,...) {double best=1e9;for(int r=0;r<REP;r++){double t=now();for(long i=0;i<(n);i++){__VA_ARGS__;}t=now()-t;if(t<best)best=t;}printf("%-28s %12.4g breaths/s  %10.1f ns  chk %.6f\n",name,(n)/best,best/(n)*1e9,o.v+o.mean);}
int main(void){
  for(int i=0;i<NP;i++){double f=1+.002*i;S[i]=(Set){11*f,14*f,.034/f,.42,1.0,.3,2.45,8,14};}
  Out o={.v=.272};static float p[512],q[512],v[512];volatile double sink=0;
  BENCH("C 1c VC numbers",4000000L,vc(&S[i&63],&o);sink=o.mean)
  BENCH("C 1c PC numbers",4000000L,pc(&S[i&63],&o);sink=o.mean)
  Mode in,pa,ex;double x[3]={8,8*C1,8*C2};
  build(&in,.42,0,8);build(&pa,0,0,8);build(&ex,0,1,8);
  BENCH("C 2c+circuit VC numbers",1000000L,double t=1.0+(i&7)*1e-4;step(&in,x,t);sink=x[0];step(&pa,x,.3);sink=x[0];step(&ex,x,2.45);o.v=x[1]+x[2])
  printf("2c end state %.12f %.12f %.12f\n",x[0],x[1],x[2]);
  BENCH("C 2c+circuit, modes rebuilt",50000L,build(&in,.42,0,8);build(&pa,0,0,8);build(&ex,0,1,8);step(&in,x,1.);step(&pa,x,.3);step(&ex,x,2.45);sink=x[0];o.v=x[1]+x[2])
  x[0]=8;x[1]=8*C1;x[2]=8*C2;step(&in,x,1);printf("after insp %.12f %.12f %.12f\n",x[0],x[1],x[2]);
  // RK4, 1 ms, one compartment VC
  {double vv=.272;BENCH("C RK4 1ms 1c VC",400L,const Set*s=&S[i&63];double h=1e-3;for(int k=0;k<1300;k++){double F=k<1000?s->vt/s->ti:0;vv+=h*F;}
    for(int k=0;k<2450;k++){double a=-1/(s->Re*s->C),b=s->peep/s->Re;double k1=a*vv+b,k2=a*(vv+h/2*k1)+b,k3=a*(vv+h/2*k2)+b,k4=a*(vv+h*k3)+b;vv+=h/6*(k1+2*k2+2*k3+k4);}o.v=vv)}
  return 0;}
